// The caps of the easy aerobic step: a share of the age-predicted maximum, 220 - age. Patricios 2023,
// doi 10.1136/bjsports-2023-106898. A rough cap for groups, not a measure of one player's heart.
#pragma once

namespace lanework::care {

// Beats a minute.
constexpr double age_predicted_maximum(int age_years) { return 220.0 - age_years; }
constexpr double heart_rate_cap(int age_years, int percent) { return age_predicted_maximum(age_years) * percent / 100; }
// Rounded down: the careful side.
int whole_heart_rate_cap(int age_years, int percent);

}  // namespace lanework::care
