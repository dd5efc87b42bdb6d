import ts from 'typescript';

/*
 * A fault in a condition can be noticed only where the condition comes out otherwise with it. Beside each condition that
 * is mutated it is therefore written down with which faults it would have: a build that comes by a fault which changes
 * nothing there need not be tried, and one that no build has otherwise is a condition that is always so.
 */

declare global {
  /** The faults by which a condition came out otherwise; nothing while nobody looks. */
  var comesOutOtherwise: Set<string> | undefined;
  /** The condition as it is, with each fault and what it would be with it. */
  var weighCondition: <Value>(value: Value, ...faults: readonly unknown[]) => Value;
}

globalThis.weighCondition = (value, ...faults) => {
  const otherwise = globalThis.comesOutOtherwise;
  if (otherwise !== undefined)
    for (let at = 0; at < faults.length; at += 2) {
      const fault = faults[at];
      if (typeof fault === 'string' && (typeof value !== 'boolean' || value !== faults[at + 1]))
        otherwise.add(fault);
    }
  return value;
};

const ACTIVE = 'stryMutAct_9fa48';
const COVERED = 'stryCov_9fa48';
const COMPARED: readonly ts.SyntaxKind[] = [
  ts.SyntaxKind.EqualsEqualsEqualsToken,
  ts.SyntaxKind.ExclamationEqualsEqualsToken,
  ts.SyntaxKind.LessThanToken,
  ts.SyntaxKind.LessThanEqualsToken,
  ts.SyntaxKind.GreaterThanToken,
  ts.SyntaxKind.GreaterThanEqualsToken,
];

const isCallOf = (node: ts.Node, name: string): node is ts.CallExpression =>
  ts.isCallExpression(node) && ts.isIdentifier(node.expression) && node.expression.text === name;

function hasCall(node: ts.Node): boolean {
  return ts.isCallExpression(node) || ts.forEachChild(node, (child) => hasCall(child) || undefined) === true;
}

/** What stands for the condition with a fault, where that can be worked out beside it. */
function isKnownBeside(node: ts.Expression): boolean {
  if (node.kind === ts.SyntaxKind.TrueKeyword || node.kind === ts.SyntaxKind.FalseKeyword) return true;
  return ts.isBinaryExpression(node) && COMPARED.includes(node.operatorToken.kind) && !hasCall(node);
}

/** The faults of one place, and the code as it is at the end of them. */
function placeOf(node: ts.ConditionalExpression) {
  const faults: { id: string; instead: ts.Expression }[] = [];
  let at: ts.Expression = node;
  while (ts.isConditionalExpression(at) && isCallOf(at.condition, ACTIVE)) {
    const [id] = at.condition.arguments;
    if (id !== undefined && ts.isStringLiteral(id)) faults.push({ id: id.text, instead: at.whenTrue });
    at = at.whenFalse;
  }
  const inside = ts.isParenthesizedExpression(at) ? at.expression : at;
  const own = ts.isBinaryExpression(inside) && isCallOf(inside.left, COVERED) ? inside.right : undefined;
  return { faults: faults.filter(({ instead }) => isKnownBeside(instead)), own };
}

export interface Weighed {
  readonly text: string;
  /** Faults of which it is known where they change something. */
  readonly ids: readonly string[];
}

/** Code with faults in it, each condition weighed. */
export function weighed(name: string, text: string): Weighed {
  const source = ts.createSourceFile(name, text, ts.ScriptTarget.Latest, true);
  const put: { at: number; text: string }[] = [];
  const ids: string[] = [];
  const visit = (node: ts.Node): void => {
    const isFirst =
      ts.isConditionalExpression(node) &&
      isCallOf(node.condition, ACTIVE) &&
      !(
        ts.isConditionalExpression(node.parent) &&
        node.parent.whenFalse === node &&
        isCallOf(node.parent.condition, ACTIVE)
      );
    if (isFirst) {
      const { faults, own } = placeOf(node);
      if (own !== undefined && faults.length > 0) {
        const beside = faults.map(({ id, instead }) => `, "${id}", ${instead.getText(source)}`).join('');
        put.push(
          { at: own.getStart(source), text: 'weighCondition(' },
          { at: own.getEnd(), text: `${beside})` },
        );
        ids.push(...faults.map(({ id }) => id));
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  const ordered = put
    .map((each, order) => ({ ...each, order }))
    .toSorted((a, b) => b.at - a.at || b.order - a.order);
  let now = text;
  for (const { at, text: more } of ordered) now = now.slice(0, at) + more + now.slice(at);
  return { text: now, ids };
}
