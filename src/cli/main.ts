/** The command line: one verb a file, answers on stdout, everything else on stderr. Exit 0 fine, 1 it will not go together, 2 unusable input, 3 Dryfit itself broke. */
import { VERSION } from '../model/document.ts';
import { nearestWord } from '../model/nearest.ts';
import { problem, shown } from '../model/problem.ts';
import { bench } from './bench.ts';
import { check } from './check.ts';
import { lay } from './lay.ts';
import { list } from './list.ts';
import { order } from './order.ts';
import { show } from './show.ts';
import { Unusable, type Options, type Verb, jsonText, printable } from './verb.ts';

const VERBS: Readonly<Record<string, Verb>> = { bench, check, lay, list, order, show };

async function main(argv: readonly string[]): Promise<number> {
  const [word, ...rest] = argv;
  if (word === undefined || word === 'help' || word === '--help') {
    process.stderr.write(`dryfit VERB FILE [--json]\nverbs: ${Object.keys(VERBS).join(', ')}\n`);
    return word === undefined ? 2 : 0;
  }
  const verb = Object.hasOwn(VERBS, word) ? VERBS[word] : undefined;
  if (!verb)
    throw new Unusable([
      problem(
        '',
        `there is no verb "${shown(word, 40)}"; there are ${Object.keys(VERBS).join(', ')}.`,
        nearestWord(word, Object.keys(VERBS)),
      ),
    ]);
  return verb(readOptions(rest));
}

/** Words that begin with -- are options; those that take a value say so here. */
const WITH_VALUE = new Set(['--out', '--effort', '--seconds', '--seed', '--stock']);
const OPTIONS = [...WITH_VALUE, '--json'];
function readOptions(words: readonly string[]): Options {
  const files: string[] = [];
  const values = new Map<string, string>();
  const refuse = (where: string, what: string, nearest?: string | null): Unusable => new Unusable([problem(shown(where), what, nearest)]);
  for (let i = 0; i < words.length; i++) {
    const w = words[i] as string;
    if (!w.startsWith('--')) {
      if (files.length) throw refuse(w, 'one piece at a time.');
      files.push(w);
    } else if (!OPTIONS.includes(w)) throw refuse(w, `there is no such option; there are ${OPTIONS.join(', ')}.`, nearestWord(w, OPTIONS));
    else if (WITH_VALUE.has(w)) {
      const value = words[++i];
      if (value === undefined || value.startsWith('--')) throw refuse(w, 'a value must follow.');
      values.set(w.slice(2), value);
    } else values.set(w.slice(2), 'yes');
  }
  return { files, values };
}

// Whoever reads the answer may stop early (`| head`): that is no fault.
process.stdout.on('error', (e: NodeJS.ErrnoException) => {
  if (e.code !== 'EPIPE') throw e;
  process.exit();
});

main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code;
  },
  (e: unknown) => {
    if (e instanceof Unusable) {
      const json = process.argv.includes('--json');
      if (json) process.stdout.write(`${jsonText({ dryfit: VERSION, title: e.title, problems: e.problems })}\n`);
      process.stderr.write(`${printable(e.lines().join('\n'))}\n`);
      process.exitCode = 2;
      return;
    }
    if (process.argv.includes('--json'))
      process.stdout.write(`${jsonText({ dryfit: VERSION, title: '', broke: e instanceof Error ? e.message : String(e) })}\n`);
    process.stderr.write(`Dryfit itself broke: ${e instanceof Error ? e.message : String(e)}\nYour file is untouched.\n`);
    if (process.env['DRYFIT_TRACE']) process.stderr.write(`${e instanceof Error ? e.stack : ''}\n`);
    process.exitCode = 3;
  },
);
