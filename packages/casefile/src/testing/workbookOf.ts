/**
 * Small workbooks for tests: the least that ECMA-376 asks of an .xlsx file.
 */
import { strToU8, zipSync } from 'fflate';

/** A cell: a number, a text, a date (as days since 1899-12-30), or nothing. */
export type TestCell = number | string | { days: number } | null;

/** An .xlsx file with these sheets. */
export function workbookOf(sheets: Record<string, TestCell[][]>): Uint8Array {
  const names = Object.keys(sheets);
  const files: Record<string, Uint8Array> = {
    '[Content_Types].xml': strToU8(
      `${XML}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/></Types>`,
    ),
    '_rels/.rels': strToU8(
      `${XML}<Relationships xmlns="${PACKAGE}"><Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    ),
    'xl/workbook.xml': strToU8(
      `${XML}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets>${names
        .map((name, i) => `<sheet name="${name}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`)
        .join('')}</sheets></workbook>`,
    ),
    'xl/_rels/workbook.xml.rels': strToU8(
      `${XML}<Relationships xmlns="${PACKAGE}">${names
        .map(
          (_, i) =>
            `<Relationship Id="rId${i + 1}" Type="${OFFICE}/worksheet" Target="worksheets/sheet${i + 1}.xml"/>`,
        )
        .join('')}<Relationship Id="rId99" Type="${OFFICE}/styles" Target="styles.xml"/></Relationships>`,
    ),
    'xl/styles.xml': strToU8(
      `${XML}<styleSheet xmlns="${MAIN}"><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="14" applyNumberFormat="1"/></cellXfs></styleSheet>`,
    ),
  };
  names.forEach((name, i) => {
    files[`xl/worksheets/sheet${i + 1}.xml`] = strToU8(
      `${XML}<worksheet xmlns="${MAIN}"><sheetData>${(sheets[name] ?? []).map(rowXml).join('')}</sheetData></worksheet>`,
    );
  });
  return zipSync(files);
}

const XML = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>';
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006/relationships';

function rowXml(cells: TestCell[], r: number): string {
  const xml = cells.map((cell, c) => {
    const at = `${String.fromCharCode(65 + c)}${r + 1}`;
    if (cell === null) return '';
    if (typeof cell === 'number') return `<c r="${at}"><v>${cell}</v></c>`;
    if (typeof cell === 'string') return `<c r="${at}" t="inlineStr"><is><t>${cell}</t></is></c>`;
    return `<c r="${at}" s="1"><v>${cell.days}</v></c>`;
  });
  return `<row r="${r + 1}">${xml.join('')}</row>`;
}
