import process from 'node:process';
import { BackupFault } from './fault.ts';
import type { Manifest } from './manifest.ts';
import { command } from './on-server.ts';
import { writeBackup } from './write-backup.ts';

/** `npm run backup -- {folder}`: all shops, as they are now, into a folder of its own. */
const [folder = `backup-${new Date().toISOString().slice(0, 19).replaceAll(':', '')}Z`, ...more] =
  process.argv.slice(2);

const said = ({ at, shops, tables }: Manifest): string => {
  const rows = tables.reduce((sum, each) => sum + each.rows, 0);
  return `${shops.length} ${shops.length === 1 ? 'shop' : 'shops'}, ${rows} rows, as they were at ${at}`;
};

await command(async ({ ownerUrl, say }) => {
  if (more.length > 0) throw new BackupFault('give one folder: npm run backup -- {folder}');
  const manifest = await writeBackup(ownerUrl, folder);
  say(`${folder}: ${said(manifest)}. Every file was read back and is whole.`);
});
