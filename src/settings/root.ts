/** Where the program's own data files are: the folder that holds `package.json`, in a checkout and when installed. */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

function findRoot(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'package.json'))) {
    const parent = dirname(folder);
    if (parent === folder) throw new Error(`No package.json above ${fileURLToPath(import.meta.url)}.`);
    folder = parent;
  }
  return folder;
}

export const ROOT = findRoot();
