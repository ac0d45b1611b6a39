// dependency-cruiser 17 asks swc to read every file as plain TypeScript, so that JSX is a syntax error to it, and its
// own visitor does not know `using`. This is loaded before it (node --require) and mends both; the rules see every file.
const swc = require('@swc/core');

const { parseFileSync } = swc;

swc.parseFileSync = (file, options) => {
  const tree = parseFileSync(file, { ...options, tsx: file.endsWith('.tsx') });
  namesKnown(tree);
  return tree;
};

/** Turns `using x = ...` into `const x = ...`, everywhere below a node. */
function namesKnown(node) {
  if (typeof node !== 'object' || node === null) return;
  if (node.type === 'UsingDeclaration') {
    node.type = 'VariableDeclaration';
    node.kind = 'const';
    node.declarations = node.decls;
  }
  for (const key in node) namesKnown(node[key]);
}
