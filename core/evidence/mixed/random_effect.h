// What is seen of one squad's or club's own effect on the log rate, given its counts and the parameters.
#pragma once

namespace lanework::evidence {

struct RandomEffect {
  double mode = 0;
  double variance = 0;  // 0 where the model has no such effects
};

}  // namespace lanework::evidence
