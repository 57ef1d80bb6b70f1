// A fitted model for a program and in words.
#pragma once

#include "app/cli/evidence/answer.h"
#include "core/evidence/mixed/count_model.h"

namespace lanework::cli {

// effects: each squad's and club's own too.
EvidenceAnswer fit_answer(const evidence::BuiltFrame& built, const evidence::CountModel& model, bool effects);

}  // namespace lanework::cli
