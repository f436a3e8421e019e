import { nearestWord } from '../model/nearest.ts';
import { problem, shown } from '../model/problem.ts';
import { edit } from './bench/edit.ts';
import { familiesBench } from './bench/families.ts';
import type { Figure } from './bench/figure.ts';
import { heap } from './bench/heap.ts';
import { pairs } from './bench/pairs.ts';
import { Unusable, type Verb, withStore } from './verb.ts';

const BENCHES: Readonly<Record<string, () => Figure[]>> = {
  edit: () => edit(),
  pairs: () => pairs(),
  heap: () => heap(),
  families: () => familiesBench(),
};

/** One JSON line a figure, ratios measured side by side in this run; all benches when none is named. Exit 0 whatever holds. */
export const bench: Verb = async (o) => {
  const asked = o.files[0];
  if (asked !== undefined && !Object.hasOwn(BENCHES, asked))
    throw new Unusable([
      problem(
        '',
        `there is no bench "${shown(asked, 40)}"; there are ${Object.keys(BENCHES).join(', ')}.`,
        nearestWord(asked, Object.keys(BENCHES)),
      ),
    ]);
  return withStore(() => {
    for (const name of asked === undefined ? Object.keys(BENCHES) : [asked])
      for (const f of BENCHES[name]?.() ?? []) process.stdout.write(`${JSON.stringify(f)}\n`);
    return 0;
  });
};
