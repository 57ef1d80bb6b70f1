#include "core/care/return_to_sport/heart_rate.h"

namespace lanework::care {

int whole_heart_rate_cap(int age_years, int percent) { return (220 - age_years) * percent / 100; }

}  // namespace lanework::care
