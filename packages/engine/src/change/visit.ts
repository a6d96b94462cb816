/** One visit as worked out, with the draws behind its figures: what two visits are compared by. */
import type { FlareAssessment, SectionAssessment } from '../assessment.ts';
import type { CaseInput, DrillingInput } from '../case.ts';
import type { SafetyResult } from '../decision/index.ts';
import type { FieldPosterior } from '../section/field/index.ts';
import type { TraceReading } from '../trace/types.ts';

export interface WorkedSection {
  assessment: SectionAssessment;
  posterior: FieldPosterior;
  intactModulusMm3: Float64Array;
}

export interface WorkedVisit {
  input: CaseInput;
  readings: ReadonlyMap<DrillingInput, TraceReading>;
  /** In the order of the input. */
  sections: readonly WorkedSection[];
  flares: readonly FlareAssessment[];
  verdict: SafetyResult;
}
