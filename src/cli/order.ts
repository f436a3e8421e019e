import { VERSION } from '../model/document.ts';
import { judge } from '../piece/judge.ts';
import { orderOf } from '../piece/order.ts';
import type { OrderView } from '../piece/view.ts';
import { Unusable, type Verb, print, readPiece, round6, withStore } from './verb.ts';

/** Steps of assembly with their directions, or what blocks it; exit 1 if and only if something stops the piece. */
export const order: Verb = async (o) => {
  const doc = readPiece(o);
  return withStore((store) => {
    const j = judge(doc, store, 2);
    if (j.problems.length) throw new Unusable(j.problems, doc.title);
    const plan = orderOf(j.built, store);
    const steps = plan.steps.map((s) => ({ ...s, along: s.along.map(round6), distance: round6(s.distance) }));
    const stuck = plan.stuck ? { stuck: plan.stuck, why: plan.why ?? '' } : {};
    print(o, { dryfit: VERSION, title: doc.title, possible: plan.possible, steps, stages: plan.stages, ...stuck }, () =>
      text(doc.title, plan),
    );
    return plan.possible && !j.findings.some((f) => f.grade === 'stops') ? 0 : 1;
  });
};
function text(title: string, plan: OrderView): string {
  const lines = [title];
  if (!plan.possible)
    lines.push(`It cannot be put together: ${plan.why ?? `these parts hold each other: ${(plan.stuck ?? []).join(', ')}.`}`);
  else if (!plan.steps.length) lines.push('There is nothing to put together: no part is joined to another.');
  for (const stage of plan.stages) {
    lines.push('', `${stage.name}:`);
    for (const i of stage.steps) lines.push(`  ${i + 1}. ${plan.steps[i]?.words ?? ''}`);
  }
  return lines.join('\n');
}
