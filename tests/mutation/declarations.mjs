/**
 * Leaves the declarations of a computation out of mutation: the shape of its input and output, which the
 * contract's own test compares field by field, and its worked example, which a test runs. Nothing in them decides.
 */
const isDeclaration = (path) => {
  const { node, parent } = path;
  if (node.type === 'ObjectProperty') return node.key.name === 'example' || node.key.name === 'words';
  return (
    node.type === 'CallExpression' &&
    parent?.type === 'VariableDeclarator' &&
    node.callee.type === 'MemberExpression' &&
    node.callee.object.name === 'z'
  );
};

export const strykerPlugins = [
  {
    kind: 'Ignore',
    name: 'declarations',
    value: {
      shouldIgnore: (path) => (isDeclaration(path) ? 'a declaration: compared by the contract' : undefined),
    },
  },
];
