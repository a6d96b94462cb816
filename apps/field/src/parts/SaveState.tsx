/** When the case was last saved, and whether there is a network. */
import { CloudOff } from 'lucide-react';
import { whenText } from '../screens/CasesScreen.tsx';
import { useOnline } from '../state/online.ts';
import { useSessionView } from '../state/useSession.tsx';

export function SaveState() {
  const { record, saving, fault, writer } = useSessionView();
  const online = useOnline();
  if (!record) return null;
  const text = fault
    ? 'not saved'
    : writer === false
      ? 'reading along'
      : saving
        ? 'saving'
        : `saved ${whenText(record.savedAt)}`;
  return (
    <p className={`save-state ${fault ? 'alarm' : ''}`}>
      {!online && (
        <span className="offline" title="No network. Everything works and is kept on this device.">
          <CloudOff aria-hidden size={18} />
          <span className="out-of-sight">No network. Everything works and is kept on this device.</span>
        </span>
      )}
      <span data-testid="saved">{text}</span>
    </p>
  );
}
