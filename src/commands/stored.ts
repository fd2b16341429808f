/** Opens a data folder's database for a command that only reads. */
import { existsSync } from 'node:fs';
import { openStore, type Store } from '../store/index.js';
import { CommandError, databaseIn } from './command.js';

export async function openStored(data: string): Promise<Store> {
  const path = databaseIn(data);
  if (!existsSync(path)) {
    throw new CommandError(`No watches are stored in ${data} yet; report one with "queenpost talk --data ${data}".`);
  }
  return openStore(path, { readonly: true });
}
