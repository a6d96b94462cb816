/** Notices by severity, with a shape and a word for each. */
import type { Notice } from '@standfast/engine';
import { Info, OctagonAlert, TriangleAlert } from 'lucide-react';

const ORDER = ['serious', 'caution', 'note'] as const;
const LOOK = {
  serious: { word: 'Serious', icon: OctagonAlert },
  caution: { word: 'Caution', icon: TriangleAlert },
  note: { word: 'Note', icon: Info },
} as const;

/** `sections.s1.drillings.d3` → `s1, d3`; plain places as they are. */
function whereWords(where: string): string {
  return where
    .split(/[.:]/)
    .filter((part) => !/^(sections|flares|drillings|tree|case json)$/.test(part))
    .join(', ');
}

export function Notices({ notices }: { notices: readonly Notice[] }) {
  if (notices.length === 0) return <p className="hint">Nothing to warn of.</p>;
  return (
    <div className="notices">
      {ORDER.map((severity) => {
        const these = notices.filter((notice) => notice.severity === severity);
        if (these.length === 0) return null;
        const { word, icon: Icon } = LOOK[severity];
        const list = (
          <ul>
            {these.map(({ where, text }) => (
              <li key={`${where} ${text}`}>
                {whereWords(where) && <strong>{whereWords(where)}: </strong>}
                {text}
              </li>
            ))}
          </ul>
        );
        const heading = (
          <>
            <Icon aria-hidden size={20} /> {word} ({these.length})
          </>
        );
        if (severity === 'note') {
          return (
            <details key={severity} className={`notice-group ${severity}`}>
              <summary>{heading}</summary>
              {list}
            </details>
          );
        }
        return (
          <section key={severity} className={`notice-group ${severity}`}>
            <h3>{heading}</h3>
            {list}
          </section>
        );
      })}
    </div>
  );
}

/** The limits every assessment has; said wherever a decision is shown. */
export function Cautions() {
  return (
    <aside className="cautions" aria-label="Cautions">
      <h2>For the assessor</h2>
      <ul>
        <li>The assessor decides. Nothing here replaces seeing the tree, its roots and its surroundings.</li>
        <li>
          A needle tells of the wood it met. What lies between needles is inferred, with the ranges shown.
        </li>
        <li>Drilling wounds the tree. Drill where the answer could change the decision, and nowhere else.</li>
        <li>No tree is free of risk. In storms beyond the design wind any tree may fail.</li>
      </ul>
    </aside>
  );
}
