/** Everything that keeps the case from being assessed, with where it is. */
import { Link } from 'wouter';
import { pathOfWhere } from '../edit/fieldPath.ts';
import { fieldWords, placeOfPath } from '../edit/whereWords.ts';
import { useRecord, useSessionView } from '../state/useSession.tsx';

/** @param onGo called when a link is followed, for a sheet that has to close. */
export function FaultList({ onGo }: { onGo?: () => void }) {
  const { id, caseFile, drafts } = useRecord();
  const { faults } = useSessionView().result;
  return (
    <ul className="fault-list">
      {Object.entries(drafts).map(([path, text]) => (
        <li key={path}>
          <p>
            <strong>{fieldWords(path, caseFile)}</strong>: “{text}” cannot be read as it stands.
          </p>
          <Link className="button quiet" onClick={onGo} href={`/case/${id}/${placeOfPath(path, caseFile)}`}>
            Go there
          </Link>
        </li>
      ))}
      {faults.map(({ what, where }) => {
        const path = pathOfWhere(where);
        const field = where.startsWith('case.json');
        return (
          <li key={`${where} ${what}`}>
            <p>
              {where && <strong>{field ? fieldWords(path, caseFile) : where}</strong>} {what}
            </p>
            {field && (
              <Link
                className="button quiet"
                onClick={onGo}
                href={`/case/${id}/${placeOfPath(path, caseFile)}`}
              >
                Go there
              </Link>
            )}
          </li>
        );
      })}
    </ul>
  );
}
