/** Writes to standard output and waits where the reader is slow; a reader that went away ends the program quietly. */
export function write(text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    process.stdout.write(text, (error) => {
      if (!error) resolve();
      else if ((error as NodeJS.ErrnoException).code === 'EPIPE') process.exit(0);
      else reject(error);
    });
  });
}
