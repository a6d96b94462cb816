/** Which of the recorded signs bear on the roots, and what they mean for the estimate of anchorage. */
import type { Notice } from '../assessment.ts';
import type { SignInput } from '../case.ts';
import { statusNote } from '../reference/index.ts';
import { rootSigns } from '../reference/tables.generated.ts';

export interface RootSigns {
  /** Signs by which an estimate from size alone is too thin to decide on, as worded by the assessor. */
  doubts: string[];
  notices: Notice[];
}

/** Reads the signs against root-signs.csv; each rule speaks once. */
export function readRootSigns(signs: readonly SignInput[]): RootSigns {
  const doubts: string[] = [];
  const notices: Notice[] = [];
  for (const rule of rootSigns) {
    const pattern = new RegExp(rule.pattern, 'i');
    const index = signs.findIndex((sign) =>
      pattern.test(`${sign.kind.replaceAll('-', ' ')} ${sign.note ?? ''}`),
    );
    if (index < 0) continue;
    const sign = signs[index]!;
    if (rule.doubt === 'yes') doubts.push(sign.where ? `${sign.kind} (${sign.where})` : sign.kind);
    notices.push({
      severity: rule.severity === 'serious' ? 'serious' : rule.severity === 'caution' ? 'caution' : 'note',
      where: `signs[${index}]`,
      text: `${rule.text} Source: ${rule.source}${statusNote(rule.status)}.`,
    });
  }
  return { doubts, notices };
}
