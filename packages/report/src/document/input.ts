/** What the report takes from a case besides its assessment. A `CaseFile` satisfies it as it is. */
import type { SignInput, SiteInput, TargetInput, TreeInput } from '@standfast/engine';

export interface ReportCase {
  client?: { name?: string };
  assessor?: { name?: string; credential?: string };
  /** Day of the visit, `2026-04-21`. */
  visitedOn?: string;
  tree: TreeInput;
  site: SiteInput;
  signs?: SignInput[];
  targets?: TargetInput[];
  sections?: { id: string; heightM: number; barkMm?: number }[];
}
