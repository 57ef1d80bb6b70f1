// What can be done to the key poses of a figure. Each takes a figure and gives another; nothing is changed in place.
import { kMostPoses, labelOf, viewOf, type Angles, type FigureDocument, type Partner, type Pose, type View } from "../figure_document.ts";
import { jointAngles, kAngleRows, kSidesOf, otherSide, within, writtenAngle, type JointAngle } from "./joints.ts";

function withPose(figure: FigureDocument, index: number, change: (pose: Pose) => Pose): FigureDocument {
  return { ...figure, pose: figure.pose.map((pose, at) => (at === index ? change(pose) : pose)) };
}

function withoutEmpty<Of extends object>(table: Of): Of {
  return Object.fromEntries(Object.entries(table).filter(([, value]) => value !== undefined)) as Of;
}

// Equal sides are written once, for both, as people write them.
function tidied(view: View, angles: Angles): Angles {
  const out = { ...angles };
  for (const { base, limb } of kAngleRows[view]) {
    if (!limb) continue;
    const [one, other] = kSidesOf[view].map((side) => out[`${base}_${side}`] ?? out[base]);
    for (const side of kSidesOf[view]) delete out[`${base}_${side}`];
    delete out[base];
    if (one === other) {
      if (one !== undefined) out[base] = one;
      continue;
    }
    if (one !== undefined) out[`${base}_${kSidesOf[view][0]}`] = one;
    if (other !== undefined) out[`${base}_${kSidesOf[view][1]}`] = other;
  }
  return out;
}

// undefined: the pose says nothing of it any more, and the ground decides where it can.
export function setAngle(view: View, angles: Angles | undefined, joint: JointAngle, degrees: number | undefined): Angles {
  const out = { ...angles };
  if (joint.side !== undefined) {
    // What stood for both stays as it is on the other side.
    const other = `${joint.base}_${otherSide(view, joint.side)}`;
    const both = out[joint.base];
    if (both !== undefined && out[other] === undefined) out[other] = both;
    delete out[joint.base];
  }
  if (degrees === undefined) delete out[joint.name];
  else out[joint.name] = Math.round(within(joint, degrees));
  return tidied(view, out);
}

// How a thigh's direction goes when the trunk leans by a degree more.
const kHipFollows: Record<string, number> = { near: 1, far: 1, left: 1, right: -1 };

export interface Turned {
  joint: JointAngle;
  degrees: number | undefined;
  both?: boolean; // the other side as well
  legs_stay?: boolean; // the hips give way as the trunk leans
}

export function turnJoint(figure: FigureDocument, index: number, { joint, degrees, both, legs_stay }: Turned): FigureDocument {
  return withPose(figure, index, (pose) => {
    const view = viewOf(figure, pose);
    let angles = setAngle(view, pose.angles, joint, degrees);
    const rows = jointAngles(view);
    if (both && joint.side !== undefined) {
      const twin = rows.find(({ base, side }) => base === joint.base && side !== joint.side);
      if (twin) angles = setAngle(view, angles, twin, degrees);
    }
    if (legs_stay && joint.name === "trunk" && degrees !== undefined) {
      const leant = (angles.trunk ?? 0) - (pose.angles?.trunk ?? 0);
      for (const hip of rows.filter(({ base }) => base === "hip")) {
        angles = setAngle(view, angles, hip, (writtenAngle(pose.angles, hip) ?? 0) + leant * (kHipFollows[hip.side ?? ""] ?? 0));
      }
    }
    return { ...pose, angles };
  });
}

function swappedName(view: View, name: string): string {
  for (const side of kSidesOf[view]) {
    if (name.endsWith(`_${side}`)) return `${name.slice(0, -side.length)}${otherSide(view, side)}`;
  }
  return name;
}

// In the side view near and far of the other person stay what they are.
function swappedJoint(view: View, name: string): string {
  return view === "side" && name.startsWith("partner.") ? name : swappedName(view, name);
}

function swappedAngles(view: View, angles: Angles): Angles {
  const turned = view === "front" ? ["trunk", "spine", "neck", "turn"] : ["turn"];
  return Object.fromEntries(Object.entries(angles).map(([name, degrees]) => [swappedName(view, name), turned.includes(name) ? 0 - degrees : degrees]));
}

function swappedPosture<Of extends Pose | Partner>(view: View, posture: Of): Of {
  const names = (all: string[] | undefined) => all?.map((name) => swappedName(view, name));
  const hold = posture.hold && Object.fromEntries(Object.entries(posture.hold).map(([hand, where]) => [swappedName(view, hand), swappedJoint(view, where)]));
  return withoutEmpty({ ...posture, angles: posture.angles && swappedAngles(view, posture.angles), contacts: names(posture.contacts), settle: names(posture.settle), hold });
}

// Left and right, or near and far, exchanged: in what the body does, touches, holds and carries.
export function mirrorPose(figure: FigureDocument, index: number): FigureDocument {
  return withPose(figure, index, (pose) => {
    const view = viewOf(figure, pose);
    const swapped = swappedPosture(view, pose);
    const joint = (name: string | undefined) => (name === undefined ? undefined : swappedJoint(view, name));
    return withoutEmpty({
      ...swapped,
      tolerances: pose.tolerances && swappedAngles(view, { ...pose.tolerances }),
      shift: pose.shift !== undefined && view === "front" ? 0 - pose.shift : pose.shift,
      props: pose.props?.map((prop) => withoutEmpty({ ...prop, forward: prop.forward !== undefined && view === "front" ? 0 - prop.forward : prop.forward, at: joint(prop.at), from: joint(prop.from), to: joint(prop.to) })),
      // In the front view the partner stands on the other side then; in the side view nothing of it turns but its hold of us.
      partner: pose.partner && (view === "front" ? swappedPartner(pose.partner) : heldOtherwise(view, pose.partner)),
    });
  });
}

function swappedPartner(partner: Partner): Partner {
  return { ...swappedPosture("front", partner), forward: 0 - (partner.forward ?? 0.8) };
}

function heldOtherwise(view: View, partner: Partner): Partner {
  if (!partner.hold) return partner;
  const swapped = (where: string) => (where.startsWith("other.") ? swappedName(view, where) : where);
  return { ...partner, hold: Object.fromEntries(Object.entries(partner.hold).map(([hand, where]) => [hand, swapped(where)])) };
}

const kLast = (figure: FigureDocument) => (figure.swap_sides ? 0.499 : 1);

// Moments of one view in rising order: those that are not are spread between their neighbours, in the order of the list.
export function inOrder(figure: FigureDocument): FigureDocument {
  let out = figure;
  for (const view of ["side", "front"] as const) {
    const of = out.pose.map((pose, index) => ({ pose, index })).filter(({ pose }) => viewOf(out, pose) === view);
    const rising = of.every(({ pose }, at) => at === 0 || (pose.at ?? 0) > (of[at - 1]?.pose.at ?? 0));
    if (rising) continue;
    const end = figure.cycle === "once" ? of.length - 1 : of.length;
    of.forEach(({ index }, at) => {
      out = withPose(out, index, (pose) => ({ ...pose, at: Math.round((kLast(figure) * at * 1000) / Math.max(1, end)) / 1000 }));
    });
  }
  return out;
}

function freshLabel(figure: FigureDocument, wanted: string): string {
  const taken = figure.pose.map(labelOf);
  for (let number = 2; ; number++) if (!taken.includes(`${wanted} ${number}`)) return `${wanted} ${number}`;
}

export const mayAddPose = (figure: FigureDocument): boolean => figure.pose.length < kMostPoses;

// After this one, like it, half-way to the next.
export function addPose(figure: FigureDocument, after: number): FigureDocument {
  const like = figure.pose[after];
  if (!like || !mayAddPose(figure)) return figure;
  const view = viewOf(figure, like);
  const next = figure.pose.slice(after + 1).find((pose) => viewOf(figure, pose) === view);
  const at = Math.round((((like.at ?? 0) + (next?.at ?? kLast(figure))) / 2) * 1000) / 1000;
  const added: Pose = { ...structuredClone(like), label: freshLabel(figure, labelOf(like, after)), at };
  return inOrder({ ...figure, pose: [...figure.pose.slice(0, after + 1), added, ...figure.pose.slice(after + 1)] });
}

// What named the pose names nothing any more.
export function removePose(figure: FigureDocument, index: number): FigureDocument {
  if (figure.pose.length < 2) return figure;
  const gone = figure.pose[index];
  const label = gone ? labelOf(gone, index) : undefined;
  const { main, ghost, arrow } = figure;
  return withoutEmpty({
    ...figure,
    main: main === label ? undefined : main,
    ghost: ghost === label ? undefined : ghost,
    arrow: arrow && arrow.to === label ? withoutEmpty({ ...arrow, to: undefined, direction: arrow.direction ?? "up" }) : arrow,
    pose: figure.pose.filter((_, at) => at !== index),
  }) as FigureDocument;
}

// One place earlier (-1) or later (1) among the poses: they change places and keep the moments.
export function movePose(figure: FigureDocument, index: number, by: -1 | 1): FigureDocument {
  const one = figure.pose[index];
  const other = figure.pose[index + by];
  if (!one || !other || viewOf(figure, one) !== viewOf(figure, other)) return figure;
  const poses = [...figure.pose];
  poses[index] = withoutEmpty({ ...other, at: one.at });
  poses[index + by] = withoutEmpty({ ...one, at: other.at });
  return { ...figure, pose: poses };
}

export function renamePose(figure: FigureDocument, index: number, label: string): FigureDocument {
  const before = figure.pose[index] && labelOf(figure.pose[index], index);
  const followed = (name: string | undefined) => (name !== undefined && name === before ? label : name);
  const renamed = withPose(figure, index, (pose) => ({ ...pose, label }));
  return withoutEmpty({
    ...renamed,
    main: followed(figure.main),
    ghost: followed(figure.ghost),
    arrow: figure.arrow && withoutEmpty({ ...figure.arrow, to: followed(figure.arrow.to) }),
  }) as FigureDocument;
}

export function changePose(figure: FigureDocument, index: number, change: Partial<Pose>): FigureDocument {
  return withPose(figure, index, (pose) => withoutEmpty({ ...pose, ...change }));
}
