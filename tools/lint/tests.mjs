// Tests that cannot fail: a property whose outcome nobody looks at (rc::check gives a bool, and no more).
import { linesOf, sources } from "../tracked_files.mjs";

export default {
  name: "lint-tests",
  run() {
    const faults = [];
    for (const name of sources(/^(tests|fuzz)\/.*\.cpp$/)) {
      linesOf(name).forEach((line, index) => {
        if (/^\s*rc::check\(/.test(line)) faults.push(`${name}:${index + 1}: nothing looks at rc::check, write EXPECT_TRUE(rc::check(...))`);
      });
    }
    return faults;
  },
};
