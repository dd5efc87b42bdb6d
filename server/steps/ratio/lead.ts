import type { ButtonData } from '../../../views/parts/button.examples.ts';
import type { CallContext } from '../../call/context.ts';
import { stationSaid } from '../../mechanics/assessment/ratio/told/ratio-said.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';

/** What the form begins with that a reading leads to, as the query of the ratio step, and the button that leads there. */
interface Lead {
  readonly label: string;
  readonly query: Readonly<Record<string, string>>;
}

const LEADS: Readonly<Record<string, Lead>> & { readonly 'light-spring-solid-lifter': Lead } = {
  'one-more-pass': { label: 'Take the pass', query: { kind: 'valve-lift' } },
  'lash-to-zero': {
    label: 'Set up with the lash at zero',
    query: { new: 'yes', 'method.lash': 'zero', 'method.lashSetting': '' },
  },
  'rest-on-retainer': {
    label: 'Set it on the retainer',
    query: { new: 'yes', 'method.restsOn': 'retainer-flat' },
  },
  'align-plunger': {
    label: 'Set up with the plunger parallel',
    query: { new: 'yes', 'method.alignment': 'parallel' },
  },
  'lobe-at-lifter': { label: 'Read the lobe', query: { kind: 'lobe-lift' } },
  'light-spring-solid-lifter': {
    label: 'Ask for a light spring',
    query: {
      new: 'yes',
      'method.spring': 'light',
      'method.lifter': 'solid',
      'method.lash': 'zero',
      'method.lashSetting': '',
    },
  },
};

const PART_WAY = 'valve-lift-at-.200';

/** Where the sentence sends to is where the form begins: one round figure of the dial that is there. */
const partWay = (): Lead => ({
  label: `Read it at ${stationSaid()}`,
  query: { kind: 'valve-lift-at', atLobeLift: stationSaid() },
});

const FOR_MARK = 'light-spring-solid-lifter';

/** The set-up that the reading is asked to be taken on was started already, and nothing was read in it yet. */
const startedFor = ({ record }: CallContext, { cylinder, valve }: SetUp): SetUp | undefined =>
  record.setUps.findLast(
    ({ id, method, ...each }) =>
      !each.struck &&
      each.cylinder === cylinder &&
      each.valve === valve &&
      method.spring === 'light' &&
      (method.lifter === 'solid' || method.lifter === 'locked') &&
      !record.readings.some(({ setUpId }) => setUpId === id),
  );

const firstPassOf = ({ base }: CallContext, { id }: SetUp): string =>
  `${base}/steps/ratio?${new URLSearchParams({ 'set-up': id, kind: 'valve-lift' })}`;

/** Of a reading that may stand against a mark: what is still to be got for it; the spring is the desk's to ask for. */
function forMark(context: CallContext, setUp: SetUp): Lead {
  const lead = LEADS[FOR_MARK];
  if (setUp.method.spring === 'light') return { ...lead, label: 'Set up with a solid lifter' };
  return context.side === 'desk' ? lead : { ...lead, label: 'Set up with a light spring' };
}

const leadTo = (action: string): Lead | undefined =>
  action === PART_WAY ? partWay() : Object.hasOwn(LEADS, action) ? LEADS[action] : undefined;

/** The button that opens the form for a reading, filled in as far as it is known. */
export function leadOf(context: CallContext, setUpId: string, asked: string): ButtonData | undefined {
  // What is missing names the valve that it is missing of behind its own name.
  const [action = ''] = asked.split(':');
  const key = context.side === 'desk' ? { key: 'l' } : {};
  if (action === 'rocker-on-another-valve')
    return { label: 'Say where the arm sits', href: `${context.base}/steps/parts`, ...key };
  const setUp = context.record.setUps.find(({ id }) => id === setUpId);
  const isForMark = action === FOR_MARK && setUp !== undefined;
  const started = isForMark ? startedFor(context, setUp) : undefined;
  if (started !== undefined)
    return { label: 'Take the first pass', href: firstPassOf(context, started), ...key };
  const lead = isForMark ? forMark(context, setUp) : leadTo(action);
  if (lead === undefined) return undefined;
  const query = new URLSearchParams({ 'set-up': setUpId, ...lead.query });
  return { label: lead.label, href: `${context.base}/steps/ratio?${query}`, ...key };
}
