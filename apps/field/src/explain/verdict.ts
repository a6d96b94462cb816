/** A safety with its interval in plain words, by fixed rules, so that every screen says the same. */
import type { SafetyAssessment } from '@standfast/engine';
import { chanceText } from '../units/quantities.ts';

/** How the words are set: a shape beside them says the same to those who cannot see the colour. */
export type VerdictGrade = 'fails' | 'may-fail' | 'below-mark' | 'holds';

export interface VerdictWords {
  grade: VerdictGrade;
  text: string;
}

/** A chance at or above which it is said in the first words. */
const WORTH_SAYING = 0.05;

export function verdictWords({ chanceBelow1, chanceBelow1_5 }: SafetyAssessment): VerdictWords {
  if (chanceBelow1 >= 0.5) {
    return {
      grade: 'fails',
      text: `More likely than not it fails in the design wind (chance ${chanceText(chanceBelow1)}).`,
    };
  }
  if (chanceBelow1 >= WORTH_SAYING) {
    return {
      grade: 'may-fail',
      text: `It may fail in the design wind (chance ${chanceText(chanceBelow1)}).`,
    };
  }
  if (chanceBelow1_5 >= WORTH_SAYING) {
    return {
      grade: 'below-mark',
      text: `It should hold in the design wind; under the usual mark of 1.5 with a chance of ${chanceText(chanceBelow1_5)}.`,
    };
  }
  return { grade: 'holds', text: 'It should hold in the design wind, with the usual mark of 1.5 in hand.' };
}
