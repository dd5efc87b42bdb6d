import process from 'node:process';
import { BackupFault } from './fault.ts';
import { command } from './on-server.ts';
import { restoreBackup } from './restore-backup.ts';

/** `npm run restore -- {folder}`: a backup into the empty database that the settings name. */
const [folder, ...more] = process.argv.slice(2);

await command(async ({ ownerUrl, say }) => {
  if (folder === undefined || more.length > 0)
    throw new BackupFault('say which backup: npm run restore -- {folder}');
  const { at, shops, tables } = await restoreBackup(ownerUrl, folder);
  const rows = tables.reduce((sum, each) => sum + each.rows, 0);
  say(`Restored as it was at ${at}: ${shops.length} ${shops.length === 1 ? 'shop' : 'shops'}, ${rows} rows.`);
});
