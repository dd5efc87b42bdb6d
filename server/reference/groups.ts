/** The shelves of the reference, in the order of a call; what is on none of them stands on the last. */
const GROUPS: readonly { readonly title: string; readonly names: readonly string[] }[] = [
  {
    title: 'Ratio on the engine',
    names: ['ratio-at-full-lift', 'ratio-through-lift', 'deflection', 'explain-readings'],
  },
  {
    title: 'Reading an instrument',
    names: ['dial-reading', 'cosine-error', 'read-number'],
  },
  {
    title: 'Lift, springs and gaps',
    names: [
      'lift',
      'spring-load',
      'spring-nest',
      'spring-from-wire',
      'retainer-to-seal',
      'pivot-load',
      'separation-speed',
    ],
  },
  {
    title: 'Cam timing and the piston',
    names: [
      'top-dead-centre',
      'centreline',
      'cam-timing',
      'lobe-profile',
      'piston-drop',
      'piston-to-valve',
      'gap-scan',
    ],
  },
  {
    title: 'Rocker geometry',
    names: ['arm-lengths', 'follower-ratio', 'roller-sweep', 'stand-height', 'pushrod-length', 'linkage'],
  },
  { title: 'Adjusters and lash', names: ['adjuster', 'lifter-preload', 'lash-shim', 'lash-hot-cold'] },
  { title: 'What fits', names: ['fastener-for-hole', 'thread', 'cover-room'] },
  { title: 'Lots and many readings', names: ['outliers', 'control-chart', 'capability'] },
];
const LAST = 'More';

interface Shelf<Item> {
  readonly title: string;
  readonly items: readonly Item[];
}

/** Sorts what is named onto the shelves. */
export function onShelves<Item extends { readonly name: string }>(items: readonly Item[]): Shelf<Item>[] {
  const known = new Set(GROUPS.flatMap((group) => group.names));
  const groups = GROUPS.map(({ title, names }) => ({
    title,
    items: names.flatMap((name) => items.filter((item) => item.name === name)),
  }));
  return [...groups, { title: LAST, items: items.filter((item) => !known.has(item.name)) }].filter(
    (group) => group.items.length > 0,
  );
}
