import { type Config, readConfig, SettingFaults } from '../config/config.ts';
import { startEmbedded } from '../database/embedded/start-embedded.ts';
import { ensureServiceRole } from '../database/service-role.ts';
import { BackupFault } from './fault.ts';

const say = (message: string): void => void process.stdout.write(`${message}\n`);

/** Runs `work` on the database that the settings name: a server of one's own, or the embedded one. */
async function onServer(config: Config, work: (ownerUrl: string) => Promise<void>): Promise<void> {
  const embedded =
    config.DATABASE_URL === undefined
      ? await startEmbedded({ dataDir: config.DATA_DIR, log: say })
      : undefined;
  try {
    const ownerUrl = config.DATABASE_URL ?? embedded?.ownerUrl ?? '';
    if (config.SERVICE_DATABASE_URL === undefined) await ensureServiceRole(ownerUrl);
    await work(ownerUrl);
  } finally {
    await embedded?.stop();
  }
}

/** A command of the terminal: what it did, or in one line why not, and how it ended for whatever started it. */
export async function command(
  work: (tools: { readonly ownerUrl: string; readonly say: (message: string) => void }) => Promise<void>,
): Promise<void> {
  try {
    await onServer(readConfig(process.env), (ownerUrl) => work({ ownerUrl, say }));
  } catch (error) {
    process.exitCode = 1;
    const isOurs = error instanceof BackupFault || error instanceof SettingFaults;
    process.stderr.write(
      `${isOurs ? error.message : error instanceof Error ? error.stack : String(error)}\n`,
    );
  }
}
