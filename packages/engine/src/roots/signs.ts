/** Which of the recorded signs bear on the roots, and what they mean for the estimate of anchorage. */
import type { Notice } from '../assessment.ts';
import type { SignInput } from '../case.ts';
import { signName, signSpeaksOf, statusNote } from '../reference/index.ts';
import { rootSigns } from '../reference/tables.generated.ts';

export interface RootSigns {
  /** Signs by which an estimate from size alone is too thin to decide on, as worded by the assessor. */
  doubts: string[];
  notices: Notice[];
}

/** Reads the signs against root-signs.csv; each rule speaks once. `answered`: fields of the case that are filled. */
export function readRootSigns(
  signs: readonly SignInput[],
  answered: ReadonlySet<string> = new Set(),
): RootSigns {
  const doubts: string[] = [];
  const notices: Notice[] = [];
  for (const rule of rootSigns) {
    if (rule.answeredBy !== '' && answered.has(rule.answeredBy)) continue;
    const index = signs.findIndex((sign) => signSpeaksOf(sign, rule.pattern));
    if (index < 0) continue;
    if (rule.doubt === 'yes') doubts.push(signName(signs[index]!));
    notices.push({
      severity: rule.severity === 'serious' ? 'serious' : rule.severity === 'caution' ? 'caution' : 'note',
      where: `signs[${index}]`,
      text: `${rule.text} Source: ${rule.source}${statusNote(rule.status)}.`,
    });
  }
  return { doubts, notices };
}
