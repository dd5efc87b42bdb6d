/** Why nothing was backed up or restored, in words for whoever does it; nothing is left half done. */
export class BackupFault extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'BackupFault';
  }
}
