/**
 * Sheets of a workbook (.xlsx) as rows of cells.
 */
import { InputFault } from '@standfast/engine';
import readWorkbookSheets from 'read-excel-file/universal';
import { looksLikeZip, zipDirectory } from '../bag/zipDirectory.ts';
import type { Cell } from './rows.ts';

/** A workbook that unpacks to more than this is refused. */
const MOST_UNPACKED_BYTES = 256 * 1024 * 1024;

export interface Sheet {
  name: string;
  rows: Cell[][];
}

/** True for .xlsx and for the older and locked workbooks, which are then refused in clear words. */
export function looksLikeWorkbook(bytes: Uint8Array): boolean {
  return looksLikeZip(bytes) || isOldOrLocked(bytes);
}

/** OLE2 files: .xls, and .xlsx under a password. */
function isOldOrLocked(bytes: Uint8Array): boolean {
  return bytes[0] === 0xd0 && bytes[1] === 0xcf && bytes[2] === 0x11 && bytes[3] === 0xe0;
}

/**
 * Every sheet of a workbook.
 *
 * @throws InputFault when it is of an older kind, locked, damaged or too large.
 */
export async function readWorkbook(bytes: Uint8Array, where: string): Promise<Sheet[]> {
  if (isOldOrLocked(bytes)) {
    throw new InputFault(
      'this is an older workbook (.xls) or one with a password: save it as .xlsx without a password, or as CSV',
      where,
    );
  }
  const entries = zipDirectory(bytes, where);
  if (!entries.some(({ name }) => name.startsWith('xl/'))) {
    throw new InputFault('this zip is no workbook: give an .xlsx file or a text table', where);
  }
  if (entries.reduce((sum, entry) => sum + entry.bytes, 0) > MOST_UNPACKED_BYTES) {
    throw new InputFault('the workbook is too large: save the sheet as CSV', where);
  }
  try {
    const sheets = await readWorkbookSheets(new Uint8Array(bytes).buffer);
    return sheets.map(({ sheet, data }) => ({ name: sheet, rows: data as unknown as Cell[][] }));
  } catch (error) {
    throw new InputFault(
      `the workbook cannot be read (${error instanceof Error ? error.message : String(error)}): save it again, or as CSV`,
      where,
    );
  }
}
