/** The steps of a call. A person opens whichever they want, whenever they want. */
export const STEPS = {
  triage: {
    title: 'Ask before anything is turned',
    link: 'First question',
    key: '1',
    say: 'Does it run, has it run, or is it apart? Did anything hit, bend, come loose or turn tight?',
    how: 'Look before you turn anything: bent pushrods, a loose rocker, a tight spot, metal in the oil.',
  },
  build: {
    title: 'Write down the engine and its springs',
    link: 'Engine and springs',
    key: '2',
    say: 'Which block and head is it, which lifter, and how are the rockers mounted?',
    how: 'Enter what you know for certain. What you don’t know stays empty, and can be added at any time.',
  },
  cam: {
    title: 'Read out the cam card',
    link: 'Cam card',
    key: '3',
    say: 'What lobe lift does the card give for each valve, and which rocker ratio does it assume?',
    how: 'Copy the card as it is printed. Lobe lift is the rise of the lifter, not of the valve.',
  },
  parts: {
    title: 'Tell the arms apart, and where each one sits',
    link: 'Rocker arms',
    key: '4',
    say: 'What looks like a ratio on the arm? What else is on it? What does the box say? One after the other, word for word.',
    how: 'Clean the mark, read it word for word. Put a felt-pen letter on each arm before you move it.',
  },
  identify: {
    title: 'Find out what the part is',
    link: 'Part in the hand',
    key: '7',
    say: 'Is there a number on the arm? Which, word for word? Then the caliper: the hole first, then the width over the trunnion.',
    how: 'Clean the part. Measure one thing at a time, as the drawing shows it; each reading is kept.',
  },
  ratio: {
    title: 'Read the ratio on the engine',
    link: 'Ratio on the engine',
    key: '5',
    say: 'Where does the small hand stand, and then the needle? And when you are back on the base circle?',
    how: 'Turn by hand in running direction to full lift. Read the small hand first, then the needle. Go on to the base circle and look at the zero.',
  },
  sheet: {
    title: 'Read every valve, one after the other',
    link: 'Per-valve sheet',
    key: '8',
    say: 'Same method on every valve: what does the lobe give, what does the valve give? Which cylinder is that, in the engine’s own numbering?',
    how: 'One valve after the other, the same way each time: lobe first, then the valve. A wire that goes and the next that does not is a reading: give both.',
  },
  consequences: {
    title: 'See what the ratio does, before parts are fitted',
    link: 'What the ratio does',
    key: '9',
    say: 'Which of these gaps did you measure yourself, and with which arms on it? Was the lifter solid?',
    how: 'Each gap says whether it was measured or calculated. What is close is measured, not calculated; what is short stops it.',
  },
  geometry: {
    title: 'Look at the sweep across the tip',
    link: 'Tip mark and geometry',
    key: 'g',
    say: 'How wide is the mark, and where does it sit: toward the valley or the exhaust side?',
    how: 'Ink the tip, light spring, two turns by hand. Measure the width of the mark first, then where it sits. Width first: a centred wide mark is still wrong.',
  },
  timing: {
    title: 'Find top dead centre and the centreline',
    link: 'Cam timing',
    key: 't',
    say: 'What does the wheel read at the stop, one way and the other? And at equal drop on either side of the peak?',
    how: 'Positive stop in, plugs out, turn gently by hand to contact, one way and the other; never the starter. Take the stop out again.',
  },
  adjuster: {
    title: 'Turn the adjuster, and know what it does',
    link: 'Adjusters and lash',
    key: 'a',
    say: 'Which thread is on the adjuster, and how far was it turned from zero lash?',
    how: 'On the base circle. Find zero lash by up-and-down play, not by spinning the pushrod; then count the turns.',
  },
  notes: {
    title: 'Say what is found, and who does what by when',
    link: 'Notes and promises',
    key: '6',
    say: 'This is what we found, this is what we don’t know yet, and this is the next reading. Right?',
    how: 'What was said and promised on this call stands here. Add a note if something is wrong or missing.',
  },
} as const;

export type StepName = keyof typeof STEPS;
export const STEP_NAMES: readonly StepName[] = [
  'triage',
  'build',
  'cam',
  'parts',
  'identify',
  'ratio',
  'sheet',
  'consequences',
  'geometry',
  'timing',
  'adjuster',
  'notes',
];

export const isStep = (name: string): name is StepName => Object.hasOwn(STEPS, name);
