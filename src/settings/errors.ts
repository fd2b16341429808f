/** A settings, dialog, wording, words or names file that cannot be used: says file, line, key, value and what would do. */
export class SettingsError extends Error {
  override readonly name = 'SettingsError';
  constructor(
    readonly file: string,
    readonly line: number | null,
    readonly key: string,
    problem: string,
    options?: ErrorOptions,
  ) {
    const where = line === null ? file : `${file}, line ${line}`;
    super(key === '' ? `${where}: ${problem}` : `${where}: ${key}: ${problem}`, options);
  }
}
