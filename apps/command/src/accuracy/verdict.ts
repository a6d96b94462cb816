/** What one felled section says of its prediction, as the summary and the table take it. */
import type { CaseFile } from '@standfast/casefile';
import type { Assessment, JudgedDirection, JudgedInterval, JudgedWall } from '@standfast/engine';

export interface SectionVerdict {
  case: string;
  section: string;
  label: string;
  species: string;
  /** The case says that it is made up. */
  invented: boolean;
  source: string;
  drillings: number;
  /** Where the prediction was lowest, and where the section in truth was weakest. */
  weakest: JudgedDirection;
  weakestInTruth: JudgedDirection;
  /** Share of the 36 directions whose truth lies inside. */
  insideShare: number;
  soundShare: JudgedInterval;
  wallsTo: 'first loss' | 'no strength';
  walls: JudgedWall[];
  warnings: string[];
}

/** One case of the folder: `standing` has no felled section. */
export type CaseOutcome =
  | { case: string; status: 'judged'; sections: SectionVerdict[] }
  | { case: string; status: 'standing' }
  | { case: string; status: 'failed'; message: string };

/** The verdict on every felled section of an assessment. */
export function verdictsOf(name: string, caseFile: CaseFile, { sections }: Assessment): SectionVerdict[] {
  return sections.flatMap(({ id, drillings, felled }) =>
    felled
      ? [
          {
            case: name,
            section: id,
            label: caseFile.tree.label ?? '',
            species: caseFile.tree.species ?? '',
            invented: caseFile.invented === true,
            source: felled.source,
            drillings: drillings.length,
            weakest: felled.weakest,
            weakestInTruth: felled.weakestInTruth,
            insideShare: felled.insideShare,
            soundShare: felled.soundShare,
            wallsTo: felled.wallsTo,
            walls: felled.walls,
            warnings: felled.warnings,
          },
        ]
      : [],
  );
}
