import type { SetUpEvidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { type Assessed, type Law, passesIn, setUpsNow } from './law.ts';
import { lashOfScans } from './scans.ts';

const EQUAL = 1e-9;

/** What the figures of one set-up have in them. */
function ofSetUp({ evidence, assessment }: Assessed, setUp: SetUpEvidence): string[] {
  if (passesIn(evidence, setUp, 'valve-lift').length === 0) return [];
  const value = (code: string) => assessment.quantities.find(({ id }) => id === `${code}:${setUp.id}`)?.value;
  const [read, gross, net] = [value('valve-lift'), value('gross-lift'), value('net-lift-read')];
  if (read === undefined) return [];
  const is = (one: number | undefined, other: number) => one !== undefined && Math.abs(one - other) < EQUAL;
  const lash = setUp.lashSetting ?? evidence.card[sideOfValve(setUp.valve)].lash ?? 0;
  if (setUp.lash === 'set') {
    const setting = setUp.lashSetting;
    return [
      ...(is(net, read) ? [] : [`${setUp.id}: read with the lash in, its net lift is not the lift as read`]),
      ...(setting === undefined && gross !== undefined
        ? [`${setUp.id}: a gross lift with the lash not known`]
        : []),
      ...(setting !== undefined && !is(gross, read + setting)
        ? [`${setUp.id}: the setting is not put back once`]
        : []),
    ];
  }
  if (setUp.lash === 'not-said')
    return gross === undefined && net === undefined
      ? []
      : [`${setUp.id}: gross or net lift with the lash not said`];
  const hydraulic = evidence.engine.lifter?.startsWith('hydraulic') ?? false;
  return [
    ...(is(gross, read) ? [] : [`${setUp.id}: read at zero lash, its gross lift is not the lift as read`]),
    ...(net === undefined || is(net, read - (hydraulic ? 0 : lash))
      ? []
      : [`${setUp.id}: the lash is not taken off once`]),
  ];
}

/** Every lobe lift that a change on a valve of this side may be calculated with. */
function lobesOf({ evidence, assessment }: Assessed, side: 'intake' | 'exhaust'): number[] {
  const sheet = evidence.sheet.filter(
    (each) => each.standing && each.valve === side && each.kind === 'lobe-lift',
  );
  return [
    evidence.card[side].lobeLift,
    ...assessment.details.setUps.filter(({ setUp }) => setUp.valve === side).map(({ lobe }) => lobe.value),
    ...sheet.map(({ reading }) => reading.value),
  ].filter((value) => value !== undefined);
}

function mostLash({ evidence }: Assessed, side: 'intake' | 'exhaust'): number {
  const logged = evidence.lash.flatMap(({ gap }) => [gap.value ?? 0, gap.high ?? 0]);
  return Math.max(evidence.card[side].lash ?? 0, 0, ...logged);
}

/** Net lifts of a change: one lash is off at the most, and none where the ratio's own lift carries it. */
function ofChange(assessed: Assessed): string[] {
  return assessed.assessment.details.change.flatMap(({ id, about, after, figures }) => {
    const net = figures.find(({ name }) => name === 'net-lift')?.after?.value;
    if (after === undefined || net === undefined || (about.of !== 'valve' && about.of !== 'side')) return [];
    const least = Math.min(...lobesOf(assessed, sideOfValve(about.valve))) * after.value;
    const off = after.lashIn ? 0 : mostLash(assessed, sideOfValve(about.valve));
    return net < least - off - EQUAL ? [`${id}: the net lift is short by more than one lash`] : [];
  });
}

/** Law 4: nothing is counted twice. */
export const nothingCountedTwice: Law = (assessed) => [
  ...setUpsNow(assessed).flatMap((setUp) => ofSetUp(assessed, setUp)),
  ...ofChange(assessed),
  ...lashOfScans(assessed),
];
