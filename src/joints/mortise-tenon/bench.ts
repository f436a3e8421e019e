import type { Operation, Place } from '../family.ts';
import { spreadOf } from './laid.ts';
import { layOut } from './make.ts';
import type { MortiseTenon } from './params.ts';

const CHISEL = 'Clamp the work; both hands behind the edge.';
const ROUTER = 'Unplug it to change the bit; clamp work and fence; eye and ear protection; follow the maker’s manual.';
const SAW = 'Guard, riving knife where the cut allows one, and push sticks; never free-hand; follow the saw’s manual.';
const DRILL = 'Clamp the work; no gloves; take the key out of the chuck.';

/** What is done, part by part, in order; figures in braces print in the maker's units. */
export function bench(p: Place<MortiseTenon>, s: MortiseTenon, hand: boolean): readonly Operation[] {
  const l = layOut(p, s);
  const depth = l.floor - l.g.gap;
  const through = s.through === 'yes';
  const n = l.tenons.length;
  const { flare } = s;
  const out: Operation[] = [
    {
      role: 'into',
      words: `Mark ${n > 1 ? `${n} mortises` : 'the mortise'} {mm:${s.thickness}} by {mm:${s.width}} with knife and gauge, always from the same face${through ? ', on both sides' : ''}.`,
      tool: 'mortise gauge and knife',
    },
  ];
  if (s.pegs > 0)
    out.push({
      role: 'into',
      words: `Bore ${s.pegs > 1 ? `${s.pegs} holes` : 'the hole'} {mm:${s.peg_diameter}} for the peg, {mm:${s.peg_back}} from the joint face, before the mortise is cut.`,
      tool: 'drill and brad-point bit',
      caution: DRILL,
    });
  out.push(
    hand
      ? {
          role: 'into',
          words: `Chop the mortise {mm:${depth}} deep${through ? ', half from each side' : ''}, levering only in the middle.`,
          tool: 'mortise chisel and mallet',
          caution: CHISEL,
        }
      : {
          role: 'into',
          words: `Rout or bore the mortise {mm:${depth}} deep in several passes and square its ends.`,
          tool: 'router or mortiser',
          caution: ROUTER,
        },
    {
      role: 'enter',
      words: `Cut the shoulders all round on the line and the cheeks to {mm:${s.thickness}}; the tenon is {mm:${l.tip}} long.`,
      tool: hand ? 'tenon saw, shoulder plane' : 'table saw with a tenoning jig, or bandsaw',
      caution: hand ? CHISEL : SAW,
    },
  );
  if (l.haunch)
    out.push({
      role: 'enter',
      words: `Saw the tenon back to a ${s.haunch} haunch {mm:${s.haunch_length}} long, and cut its seat in the other part.`,
      tool: 'tenon saw and chisel',
      caution: CHISEL,
    });
  if (l.mitres.length)
    out.push({
      role: 'enter',
      words: 'Mitre the end so that it clears the other tenon by a paper’s width or more; the shoulders must close first.',
      tool: 'fine saw and block plane',
    });
  if (s.pegs > 0 && s.drawbore > 0)
    out.push({
      role: 'enter',
      words: `Push the joint home dry, prick the hole on the tenon, and bore it {mm:${s.drawbore}} nearer the shoulder.`,
      tool: 'awl and drill',
      caution: DRILL,
    });
  else if (s.pegs > 0)
    out.push({
      role: 'enter',
      words: 'Clamp the joint home dry and bore the tenon through the holes.',
      tool: 'drill and brad-point bit',
      caution: DRILL,
    });
  if (l.wedges.length)
    out.push({
      role: 'enter',
      words: `Saw ${s.wedges > 1 ? `${s.wedges} kerfs` : 'a kerf'} for the wedges two thirds down ${n > 1 ? 'each' : 'the'} tenon${s.fox === 'yes' ? '' : flare > 0 ? '' : ', and flare the mortise at the back by half a wedge'}.`,
      tool: 'fine saw',
      caution: CHISEL,
    });
  if (l.wedges.length && flare > 0)
    out.push({
      role: 'into',
      words: `Undercut the ${spreadOf(l) === 'y' ? 'ends' : 'cheeks'} of the mortise from a third of its depth on, {mm:${flare}} wider on each side at its ${s.fox === 'yes' ? 'bottom' : 'back'}.`,
      tool: 'chisel and bevel',
      caution: CHISEL,
    });
  if (s.fox === 'yes')
    out.push({
      role: 'enter',
      words: `Try the joint dry without its wedges: with them it never comes apart again. Start the wedges in their kerfs, {mm:${l.floor - l.tip}} longer than these, and draw the joint up in one go.`,
      tool: 'clamp and mallet',
      caution: CHISEL,
    });
  out.push({
    role: 'enter',
    words:
      s.glue === 'yes'
        ? 'Fit the cheeks until the tenon slides in under hand pressure, then glue the cheeks, not the end.'
        : 'Fit the cheeks until the tenon slides in under hand pressure.',
    tool: 'shoulder plane',
  });
  return out;
}
