// @ts-nocheck: the linter hands over syntax trees for which it ships no types.
/** Lint rules of the house that the linter does not bring along. */
const noExportStar = {
  create: (context) => ({
    ExportAllDeclaration(node) {
      context.report({ node, message: 'No `export *`: name what a file gives away.' });
    },
  }),
};

/** Exact files: `./vec3.ts`, never `./vec3` or a folder. */
const exactFile = {
  create(context) {
    const look = (node) => {
      const from = node.source?.value;
      if (typeof from !== 'string' || !from.startsWith('.')) return;
      if (!/\.[a-z0-9]+(\?[a-z]+)?$/i.test(from)) context.report({ node, message: `Import the exact file, with its ending: '${from}'.` });
    };
    return { ImportDeclaration: look, ExportNamedDeclaration: look, ImportExpression: look };
  },
};

export default { meta: { name: 'house' }, rules: { 'no-export-star': noExportStar, 'exact-file': exactFile } };
