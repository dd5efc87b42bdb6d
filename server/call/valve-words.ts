import { defined } from '../../shared/defined.ts';
import { keysOf, VALVES } from '../../shared/schemas/words.ts';
import { valveNames } from '../mechanics/assessment/common/valve-names.ts';
import type { CallContext } from './context.ts';

/** Valves of a cylinder of this engine as a form offers them; those that anything was read of stay in the list. */
export function valveWords({ build, record }: CallContext): Readonly<Record<string, string>> {
  const { intakeValves, exhaustValves } = build.spec.engine ?? {};
  const engine = defined({ intakeValves, exhaustValves });
  const names = new Set<string>([
    ...valveNames({ engine }),
    ...record.sheetReadings.map(({ valve }) => valve),
    ...record.setUps.map(({ valve }) => valve),
  ]);
  return Object.fromEntries(
    keysOf(VALVES).flatMap((name) => (names.has(name) ? [[name, VALVES[name]]] : [])),
  );
}
