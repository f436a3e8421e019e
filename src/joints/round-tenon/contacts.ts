import { type Frame, compose, outDir } from '../../geom/frame.ts';
import { circle, loopPoints } from '../../geom/loop.ts';
import { type Vec3, dot } from '../../geom/vec3.ts';
import type { Contact, Side } from '../family.ts';
import { frameAlong, roundSide, wedgeContacts } from '../features.ts';
import { flatContact } from '../blocks.ts';
import type { Meeting } from '../meeting.ts';
import type { Laid } from './lay.ts';

/** The round in its hole; its end over the bottom; the shoulder where it closes; the wedge in its kerf. */
export function contacts(m: Meeting, l: Laid): Contact[] {
  const through = l.s.through === 'yes';
  const along: Vec3 = [0, 0, 1];
  const from: Vec3 = [0, 0, Math.max(0, l.g.gap)];
  const long = (through ? l.g.gap + l.g.deep : l.tip) - from[2];
  const glued = l.s.glue === 'yes';
  const out: Contact[] = [
    {
      name: 'round tenon in its hole',
      between: [
        roundSide('enter', 'round tenon', 'round', from, along, l.r, long),
        roundSide('into', 'hole', 'round', from, along, l.r, long),
      ],
      fit: l.wedge ? 'press' : 'slip',
      meant: 0,
      hold: glued ? 'glued' : l.wedge ? 'pinned' : 'dry',
      glue: 'long',
      ...(glued ? { gluedLength: l.s.diameter } : {}),
    },
  ];
  if (!through) out.push(bottom(l));
  if (l.back === 0 && l.g.closes.length > 0) out.push(shoulder(m, l));
  if (l.wedge) {
    const { at, spec } = l.wedge;
    for (const c of wedgeContacts(spec, 'wedge1', 'kerf', 0, 'enter', glued ? 'glued' : 'pinned'))
      out.push({ ...c, between: [turnedSide(at, c.between[0]), turnedSide(at, c.between[1])] });
  }
  return out;
}
function turnedSide(at: Frame, s: Side): Side {
  if (!('plane' in s.surface)) return s;
  const { plane, patch, patchFrame } = s.surface;
  return { ...s, surface: { plane: { normal: outDir(at, plane.normal), off: plane.off }, patch, patchFrame: compose(at, patchFrame) } };
}
/** A part that was dimensioned into a surface that is not flat stands deeper than its stock's end; the space below it is what is left. */
function bottom(l: Laid): Contact {
  const apart = l.floor - l.tip;
  return flatContact({
    name: 'end over the bottom of the hole',
    a: { role: 'enter', feature: 'round tenon', face: 'end' },
    b: { role: 'into', feature: 'hole', face: 'bottom' },
    on: { frame: frameAlong([0, 0, l.tip], [0, 0, 1]), patch: loopPoints(circle(0, 0, l.r), 24).points },
    meant: l.g.bite > 0 ? apart : l.s.spare,
    apart,
    fit: 'gap',
    hold: 'dry',
    glue: 'never',
  });
}
function shoulder(m: Meeting, l: Laid): Contact {
  const trim = l.g.enter.shapes.find(
    (f) => f.why === 'trim' && f.solid.kind === 'half' && Math.abs(dot(outDir(f.at, f.solid.normal), m.shoulder.normal)) > 0.9999,
  );
  const at = frameAlong([0, 0, 0], m.shoulder.normal);
  const patch = l.g.closes.map((q) => {
    const z = -(m.shoulder.normal[0] * q[0] + m.shoulder.normal[1] * q[1]) / m.shoulder.normal[2];
    return [q[0] * at.x[0] + q[1] * at.x[1] + z * at.x[2], q[0] * at.y[0] + q[1] * at.y[1] + z * at.y[2]] as const;
  });
  const far = { ...at, o: [0, 0, m.gap] as Vec3 };
  return {
    name: 'shoulder',
    between: [
      {
        role: 'enter',
        ...(trim ? { feature: trim.name, face: Object.keys(trim.faces)[0] ?? 'plane' } : { feature: 'stock', face: l.g.enter.end }),
        surface: { plane: m.shoulder, patch, patchFrame: at },
      },
      { role: 'into', feature: 'stock', face: l.g.into.end, surface: { plane: m.face, patch, patchFrame: far } },
    ],
    fit: 'slip',
    meant: 0,
    hold: 'dry',
    glue: 'end',
  };
}
