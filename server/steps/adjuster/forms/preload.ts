import { inSpoken } from '../../../../shared/quantities/authored.ts';
import { inField, lastInput, textInField } from '../../../call/worked/in-field.ts';
import { knownOf } from '../../../call/worked/known-inputs.ts';
import { atBench, firstAt, type PartForm } from '../../../call/worked/part-form.ts';
import { bareInches, inches } from '../../../mechanics/assessment/common/said.ts';
import { USUAL_PRELOADS } from '../../../mechanics/setting/setting-table.ts';
import { numberField, quantityField, selectField, textField } from '../../../web/forms/fields.ts';
import { knownThread, placeIn, placesOf, SUCH_AS, ZERO_FOUND } from './common.ts';

const bandSaid = ({ from, to }: { readonly from: number; readonly to: number }): string =>
  `${from === 0 ? '0' : bareInches(from)} to ${inches(to)}`;

const bands = () => ({
  usual: `The usual band: ${bandSaid(USUAL_PRELOADS.usual)}`,
  'short-travel': `A short-travel lifter: ${bandSaid(USUAL_PRELOADS['short-travel'])}`,
  maker: 'The maker’s own, below',
});

const LABELS = {
  turns: 'Turns past zero lash',
  thread: 'Thread of the adjuster',
  liftersTravel: 'Travel of the plunger',
  band: 'Which band it is held against',
  'wanted.from': 'Least preload',
  'wanted.to': 'Most preload',
  zeroFoundBy: 'How zero lash was found',
  ratio: 'Rocker ratio',
  mount: 'Where the adjuster is',
};

const COMPUTATION = ['lifter-preload'];

const makers = (fields: Readonly<Record<string, string>>): boolean =>
  ['wanted.from', 'wanted.to'].some((name) => (fields[name] ?? '').trim() !== '');

/** The band: the maker’s where one was typed. “The maker’s” without one is refused by the computation. */
function bandOf(fields: Readonly<Record<string, string>>): Record<string, string> {
  const { band = '', 'wanted.from': from = '', 'wanted.to': to = '' } = fields;
  return makers(fields) ? { 'wanted.from': from, 'wanted.to': to } : { plunger: band };
}

/** What turns past zero lash press the plunger down, against the band of its kind and the travel it has. */
export const preloadForm: PartForm = {
  labels: LABELS,
  button: 'Save the preload',
  initial: (context, workings) => {
    const { ratio, mount } = knownOf('lifter-preload', context.build.spec);
    return {
      thread: knownThread(workings),
      liftersTravel: inField(lastInput(workings, COMPUTATION, 'liftersTravel')),
      band: textInField(lastInput(workings, COMPUTATION, 'plunger')) || 'usual',
      ratio: textInField(ratio),
      mount: placeIn(mount),
    };
  },
  groups: (shown, context) => [
    {
      columns: true,
      slots: [
        numberField(shown, 'turns', LABELS.turns, { hint: 'As .5, 3/4 or 1 1/4.', ...firstAt(context) }),
        textField(shown, 'thread', LABELS.thread, {
          hint: SUCH_AS,
          ...atBench(context),
        }),
        selectField(shown, 'zeroFoundBy', LABELS.zeroFoundBy, ZERO_FOUND),
        selectField(shown, 'band', LABELS.band, bands(), {
          hint: inSpoken(
            'The lifter’s maker goes first. .020 to .060: trade press; 0 to .010: common practice, no source.',
          ),
        }),
        quantityField(shown, 'liftersTravel', LABELS.liftersTravel, 'length', {
          optional: true,
          hint: 'From its clip to its bottom: tells what is left.',
        }),
      ],
    },
    {
      legend: 'The maker’s band',
      fold: shown.typed.band === 'maker' || makers(shown.typed) || shown.faults.length > 0 ? 'open' : 'shut',
      columns: true,
      slots: [
        quantityField(shown, 'wanted.from', LABELS['wanted.from'], 'length', { optional: true }),
        quantityField(shown, 'wanted.to', LABELS['wanted.to'], 'length', { optional: true }),
      ],
    },
    {
      legend: 'As the build has it',
      fold: (shown.typed.ratio ?? '') === '' || shown.faults.length > 0 ? 'open' : 'shut',
      columns: true,
      slots: [
        numberField(shown, 'ratio', LABELS.ratio),
        selectField(shown, 'mount', LABELS.mount, placesOf(shown)),
      ],
    },
  ],
  toTyped: ({ turns = '', thread = '', liftersTravel = '', ratio = '', mount = '', ...rest }) => ({
    zeroFoundBy: rest.zeroFoundBy ?? '',
    turns,
    thread,
    liftersTravel,
    ratio,
    mount,
    ...bandOf(rest),
  }),
  faultAt: ({ field, detail }) =>
    field === 'plunger'
      ? { field: 'wanted.from', detail: 'is missing: the maker’s band' }
      : { field, detail },
};
