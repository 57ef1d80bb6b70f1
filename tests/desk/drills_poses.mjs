// Key poses edited: what a drag turns is what the door then draws, limits hold, and what was done can be undone.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { loadDoor } from "../../wasm/load.mjs";
import { program, root, wasmModule } from "../pitchside/places.mjs";
import { samplePackage } from "../pitchside/sample_package.mjs";
import { loadTypescript } from "../pitchside/typescript.mjs";

const edit = await loadTypescript("../desk/drills/edit/pose_edit.ts");
const joints = await loadTypescript("../desk/drills/edit/joints.ts");
const drag = await loadTypescript("../desk/drills/edit/drag.ts");
const pictures = await loadTypescript("../desk/drills/edit/pose_pictures.ts");
const steps = await loadTypescript("../desk/drills/edit/history.ts");
const run = await loadDoor(readFileSync(wasmModule()));
const { drills } = samplePackage(program()).catalogue;
const figures = drills.flatMap((drill) => [
  [drill.id, drill.figure],
  ...Object.entries(drill.rung_figure ?? {}).map(([rung, figure]) => [`${drill.id} ${rung}`, figure]),
]);
const viewOf = (figure, pose) => pose.view ?? figure.view;

function ask(figure, frames = 24) {
  return JSON.parse(run(JSON.stringify({ request: "figure", drill: { figure }, rung: "any", frames, props: true })));
}
function shown(figure, poses) {
  const asked = pictures.picturesAsked(figure, poses);
  const answer = ask(asked.figure, asked.frames);
  assert.equal(answer.answer, "figure", JSON.stringify(answer));
  return { asked, answer, frames: pictures.shownFrames(answer, asked) };
}
const turned = (figure) => figure.facing === "left" || figure.facing === "away";

test("the angles and their limits are those that the door takes", () => {
  for (const view of ["side", "front"]) {
    for (const joint of joints.jointAngles(view)) {
      for (const [degrees, taken] of [[joint.least, true], [joint.most, true], [joint.least - 1, false], [joint.most + 1, false]]) {
        const { answer } = ask({ view, cycle: "hold", pose: [{ lift: 0.5, angles: { [joint.name]: degrees } }] });
        assert.equal(answer, taken ? "figure" : "faults", `${view} ${joint.name} ${degrees}`);
      }
    }
    const answer = ask({ view, cycle: "hold", pose: [{ angles: { tail: 3 } }] });
    assert.equal(answer.answer, "faults");
  }
});

test("a joint that is dragged ends where the pointer is, in every view and way round", () => {
  let tried = 0;
  for (const view of ["side", "front"]) {
    for (const facing of view === "side" ? ["right", "left"] : ["viewer", "away"]) {
      const start = { view, facing, cycle: "hold", pose: [{ lift: 0.4, angles: { trunk: 15, hip: 20, knee: view === "side" ? 30 : -10, shoulder: 40, elbow: 25, ...(view === "side" ? { ankle: 10 } : {}) } }] };
      const names = drag.handlesOf(view, shown(start, [0]).frames[0], turned(start)).map(({ angle }) => angle);
      assert.ok(names.length === (view === "side" ? 15 : 13), `${names}`);
      for (const name of names) {
        const joint = joints.jointAngles(view).find((one) => one.name === name);
        for (const by of [-25, 18]) {
          let figure = start;
          const first = drag.handlesOf(view, shown(figure, [0]).frames[0], turned(figure)).find(({ angle }) => angle === name);
          const radians = (by * Math.PI) / 180;
          // The pointer stays where it is seen from the joint, while the body may move under it.
          const seen = { x: first.at.x - first.about.x, y: first.at.y - first.about.y };
          const wanted = { x: seen.x * Math.cos(radians) - seen.y * Math.sin(radians), y: seen.x * Math.sin(radians) + seen.y * Math.cos(radians) };
          for (let round = 0; round < 6; round++) {
            const handle = drag.handlesOf(view, shown(figure, [0]).frames[0], turned(figure)).find(({ angle }) => angle === name);
            const degrees = joints.angleOf(figure.pose[0].angles, joint) + drag.turnTowards(handle, { x: handle.about.x + wanted.x, y: handle.about.y + wanted.y });
            figure = edit.turnJoint(figure, 0, { joint, degrees });
          }
          const at = joints.angleOf(figure.pose[0].angles, joint);
          if (at === joint.least || at === joint.most) continue; // as far as it goes
          const handle = drag.handlesOf(view, shown(figure, [0]).frames[0], turned(figure)).find(({ angle }) => angle === name);
          const off = Math.abs(drag.turnTowards(handle, { x: handle.about.x + wanted.x, y: handle.about.y + wanted.y }));
          assert.ok(off <= 1.5, `${view} ${facing} ${name} by ${by}: off by ${off}`);
          tried += 1;
        }
      }
    }
  }
  assert.ok(tried > 90, `${tried}`);
});

test("an angle set is within its limits, and nothing else moves", () => {
  for (const [name, figure] of figures) {
    figure.pose.forEach((pose, index) => {
      const view = viewOf(figure, pose);
      const all = joints.jointAngles(view);
      for (const joint of all) {
        for (const degrees of [-999, -7, 0, 33.4, 999]) {
          const changed = edit.turnJoint(figure, index, { joint, degrees });
          const angles = changed.pose[index].angles;
          assert.equal(joints.angleOf(angles, joint), Math.round(Math.min(joint.most, Math.max(joint.least, degrees))));
          for (const other of all) {
            if (other.name !== joint.name) assert.equal(joints.writtenAngle(angles, other), joints.writtenAngle(pose.angles, other), `${name} ${joint.name} moves ${other.name}`);
          }
        }
      }
    });
  }
});

test("mirrored twice, a pose is what it was; mirrored once, the front view is the picture in a mirror", () => {
  for (const [name, figure] of figures) {
    figure.pose.forEach((pose, index) => {
      const once = edit.mirrorPose(figure, index);
      const twice = edit.mirrorPose(once, index);
      const same = { ...pose, angles: pose.angles ?? {} };
      const tidy = (one) => JSON.parse(JSON.stringify(one, (_, value) => (Object.is(value, -0) ? 0 : value)));
      const { partner: _one, ...back } = tidy({ ...twice.pose[index], angles: twice.pose[index].angles ?? {} });
      const { partner: _other, ...was } = tidy(same);
      assert.deepEqual(back, was, name);
      assert.equal(ask(once).answer, "figure", name);
      if (viewOf(figure, pose) !== "front" || pose.hold || pose.settle) return;
      const extent = (one) => pictures.extentOf(shown(one, [index]).frames.map(({ strokes, head }) => ({ strokes, head })));
      const a = extent(figure);
      const b = extent(once);
      assert.ok(Math.abs(a.right - a.left - (b.right - b.left)) <= 4 && Math.abs(a.top - b.top) <= 4, `${name}: ${JSON.stringify([a, b])}`);
    });
  }
});

test("the picture's ground and scale stay where they are while any joint goes as far as it can", () => {
  for (const [name, figure] of figures.slice(0, 60)) {
    const view = viewOf(figure, figure.pose[0]);
    const before = shown(figure, [0]).answer;
    for (const joint of joints.jointAngles(view).filter(({ base }) => ["trunk", "hip", "knee", "shoulder"].includes(base))) {
      for (const degrees of [joint.least, joint.most]) {
        const changed = edit.turnJoint(figure, 0, { joint, degrees });
        const after = shown(changed, [0]).answer;
        assert.equal(after.width, before.width, `${name} ${joint.name} ${degrees}`);
        assert.equal(after.ground, before.ground, `${name} ${joint.name} ${degrees}`);
      }
    }
  }
});

test("poses are added, moved and taken away, and the figure stays one that the door draws", () => {
  for (const [name, figure] of figures.filter((_, at) => at % 8 === 0)) {
    const drawn = (one) => assert.equal(ask(one).answer, "figure", `${name}: ${JSON.stringify(ask(one))}`);
    let most = figure;
    for (let index = 0; index < figure.pose.length; index++) drawn(edit.addPose(figure, index));
    while (edit.mayAddPose(most)) most = edit.addPose(most, most.pose.length - 1);
    assert.equal(most.pose.length, 12);
    drawn(most);
    assert.equal(edit.addPose(most, 0), most);
    for (let index = 0; index + 1 < most.pose.length; index++) drawn(edit.movePose(most, index, 1));
    drawn(edit.renamePose(most, 0, "first of all"));
    assert.deepEqual(edit.movePose(edit.movePose(most, 1, 1), 2, -1), most);
    let least = most;
    while (least.pose.length > 1) drawn((least = edit.removePose(least, 0)));
    assert.equal(edit.removePose(least, 0), least);
  }
});

test("what was done is undone and done again, and a stroke is one step", () => {
  let history = steps.beginning(0);
  for (const [now, kind] of [[1, "knee"], [2, "knee"], [3, "hip"], [4], [5]]) history = steps.done(history, now, kind);
  const seen = [];
  for (let at = 0; at < 6; at++) seen.push((history = steps.undone(history)).now);
  assert.deepEqual(seen, [4, 3, 2, 0, 0, 0]);
  for (let at = 0; at < 6; at++) history = steps.redone(history);
  assert.equal(history.now, 5);
  history = steps.done(steps.undone(history), 9);
  assert.equal(steps.redone(history), history, "a new step forgets what was undone");
  let strokes = steps.done(steps.beginning(0), 1, "knee");
  strokes = steps.done(steps.settled(strokes), 2, "knee");
  assert.equal(steps.undone(strokes).now, 1);
});
