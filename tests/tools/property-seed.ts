import fc from 'fast-check';

/** The same builds in every run, so that a failure is found again; PROPERTY_SEED draws others. */
fc.configureGlobal({ seed: Number(process.env.PROPERTY_SEED ?? 20) });
