import { inSpoken } from '../../../shared/quantities/authored.ts';
import type { ButtonData } from '../../../views/parts/button.examples.ts';
import type { CallContext } from '../../call/context.ts';

/** What the form begins with that a reading leads to, as the query of the ratio step, and the button that leads there. */
const LEADS: Readonly<
  Record<string, { readonly label: string; readonly query: Readonly<Record<string, string>> }>
> = {
  'one-more-pass': { label: 'Take the pass', query: { kind: 'valve-lift' } },
  'lash-to-zero': {
    label: 'Set up with the lash at zero',
    query: { new: 'yes', 'method.lash': 'zero', 'method.lashSetting': '' },
  },
  'align-plunger': {
    label: 'Set up with the plunger parallel',
    query: { new: 'yes', 'method.alignment': 'parallel' },
  },
  'valve-lift-at-.200': {
    label: 'Read it at .200 in',
    query: { kind: 'valve-lift-at', atLobeLift: '.200 in' },
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

/** The button that opens the form for a reading, filled in as far as it is known. */
export function leadOf(context: CallContext, setUpId: string, asked: string): ButtonData | undefined {
  // What is missing names the valve that it is missing of behind its own name.
  const [action = ''] = asked.split(':');
  const key = context.side === 'desk' ? { key: 'l' } : {};
  if (action === 'rocker-on-another-valve')
    return { label: 'Say where the arm sits', href: `${context.base}/steps/parts`, ...key };
  const lead = Object.hasOwn(LEADS, action) ? LEADS[action] : undefined;
  if (lead === undefined) return undefined;
  const query = new URLSearchParams({ 'set-up': setUpId, ...lead.query });
  return { label: inSpoken(lead.label), href: `${context.base}/steps/ratio?${query}`, ...key };
}
