import { z } from 'zod';

const url = z.url({ protocol: /^postgres(ql)?$/ });

/** Every setting of the process: what it is, what is allowed, what it is when left out. */
const settings = z.object({
  NODE_ENV: z
    .enum(['development', 'production', 'test'])
    .default('development')
    .describe('production invents nothing and checks the required settings'),
  HOST: z.string().min(1).default('127.0.0.1').describe('address to listen on'),
  PORT: z.coerce.number().int().min(0).max(65535).default(3000).describe('port to listen on'),
  DATABASE_URL: url
    .optional()
    .describe(
      'PostgreSQL 15 or later, as the role that owns the tables; left out, an embedded server under DATA_DIR',
    ),
  SERVICE_DATABASE_URL: url
    .optional()
    .describe(
      'the same database as the service’s own role; left out, DATABASE_URL’s server as benchcall_service',
    ),
  DATA_DIR: z.string().min(1).default('.data').describe('folder of the embedded PostgreSQL'),
  PUBLIC_URL: z
    .url({ protocol: /^https?$/ })
    .optional()
    .describe('the address people type; links and the cookie follow it'),
  DESK_PHONE: z
    .string()
    .min(2)
    .max(60)
    .optional()
    .describe('how the desk is called; on sheets of a call and on pages that went wrong'),
  TRUSTED_PROXIES: z
    .string()
    .optional()
    .describe('addresses or ranges, comma between, whose X-Forwarded-For is believed; name every proxy'),
  COMPUTE_PER_MINUTE: z.coerce
    .number()
    .int()
    .min(1)
    .max(1e9)
    .default(3000)
    .describe('computations a minute for one address'),
  POOL_SIZE: z.coerce
    .number()
    .int()
    .min(1)
    .max(200)
    .default(10)
    .describe('database connections of this process'),
  LOG_LEVEL: z
    .enum(['fatal', 'error', 'warn', 'info', 'debug', 'silent'])
    .default('info')
    .describe('least level that is logged'),
});

export type Config = z.output<typeof settings>;

export const settingNames = Object.keys(settings.shape);
export const settingDescriptions: Record<string, string> = Object.fromEntries(
  Object.entries(settings.shape).map(([name, schema]) => [name, schema.description ?? '']),
);

/** Thrown at start with every fault of the settings, so that they can be mended in one go. */
export class SettingFaults extends Error {
  readonly faults: readonly string[];
  constructor(faults: readonly string[]) {
    super(`the settings can't be used:\n${faults.map((fault) => `  ${fault}`).join('\n')}`);
    this.name = 'SettingFaults';
    this.faults = faults;
  }
}

const INVENTED_PHONE = 'extension 40 (demo)';

/** Reads the settings from an environment; an empty text counts as left out. */
export function readConfig(environment: NodeJS.ProcessEnv): Config {
  const given = Object.fromEntries(
    settingNames.flatMap((name) => (environment[name] ? [[name, environment[name]]] : [])),
  );
  // The demo's desk is invented, and so is its telephone.
  const parsed = settings.safeParse(
    given.NODE_ENV === 'production' ? given : { DESK_PHONE: INVENTED_PHONE, ...given },
  );
  const faults = parsed.success
    ? []
    : parsed.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`);
  if (given.NODE_ENV === 'production') {
    for (const name of ['DATABASE_URL', 'PUBLIC_URL']) {
      if (given[name] === undefined)
        faults.push(`${name}: required in production (${settingDescriptions[name]})`);
    }
  }
  if (!parsed.success || faults.length > 0) throw new SettingFaults(faults);
  return parsed.data;
}
