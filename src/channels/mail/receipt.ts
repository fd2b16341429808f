/** Sets a receipt as plain text and as HTML: one column, no picture, nothing fetched, legible in any colours. */
import { htmlEscape } from 'escape-goat';
import type { Receipt } from '../../../shared/receipt.js';

const numbered = ({ lines }: Receipt): string =>
  lines.map(({ label, value }, at) => `  ${at + 1}. ${label}: ${value}`).join('\n');

/** Paragraphs with a blank line between them. */
export const receiptText = (receipt: Receipt): string =>
  `${[...receipt.opening, numbered(receipt), ...receipt.closing].join('\n\n')}\n`;

const paragraph = (text: string): string => htmlEscape`<p>${text}</p>`;

const row = ({ label, value }: Receipt['lines'][number], at: number): string =>
  htmlEscape`<tr valign="top"><td align="right" style="padding: 3px 8px 3px 0">${at + 1}</td><th scope="row" align="left" style="padding: 3px 16px 3px 0; font-weight: 600">${label}</th><td style="padding: 3px 0">${value}</td></tr>`;

/** A whole page; every word of the receipt is escaped. */
export function receiptHtml(receipt: Receipt): string {
  const head = htmlEscape`<!doctype html>
<html lang="${receipt.locale}">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${receipt.subject}</title></head>`;
  return [
    head,
    '<body style="max-width: 38em; margin: 1em auto; padding: 0 1em; font-family: system-ui, sans-serif; line-height: 1.45">',
    ...receipt.opening.map(paragraph),
    '<table style="border-collapse: collapse">',
    ...receipt.lines.map(row),
    '</table>',
    ...receipt.closing.map(paragraph),
    '</body>',
    '</html>',
    '',
  ].join('\n');
}
