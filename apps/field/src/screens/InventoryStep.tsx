/** A tree inventory on its way in: which property is what, what is at fault, and a case of each tree. */
import type { InventoryMapping, InventoryProperty, InventorySurvey } from '@standfast/casefile';
import { proxy } from 'comlink';
import { useEffect, useState } from 'react';
import { Button, Label, ProgressBar } from 'react-aria-components';
import { useLocation } from 'wouter';
import { Choice } from '../parts/list/ListFilters.tsx';
import { Sheet } from '../parts/Sheet.tsx';
import { complain, say } from '../state/toast.tsx';
import { useWaitingInventories, waitForInventories } from '../state/waiting.ts';
import { type InventoryOutcome, inventoryWorker } from '../work/inventory.ts';

/** Stands for no property in a choice. */
const NONE = '';

export function InventoryStep() {
  const [file] = useWaitingInventories();
  if (!file) return null;
  const close = () => waitForInventories([]);
  return (
    <Sheet
      wide
      sturdy
      isOpen
      title="Trees of an inventory"
      onOpenChange={(open) => {
        if (!open) close();
      }}
    >
      <Taking key={`${file.name} ${file.size} ${file.lastModified}`} file={file} close={close} />
    </Sheet>
  );
}

function Taking({ file, close }: { file: File; close: () => void }) {
  const [survey, setSurvey] = useState<InventoryOutcome<InventorySurvey> | null>(null);
  useEffect(() => {
    let gone = false;
    inventoryWorker()
      .survey(file)
      .catch((thrown: unknown) => ({ ok: false as const, message: String(thrown) }))
      .then((found) => {
        if (!gone) setSurvey(found);
      });
    return () => {
      gone = true;
    };
  }, [file]);
  if (survey === null)
    return (
      <ProgressBar className="progress" isIndeterminate>
        <Label>Looking {file.name} over…</Label>
      </ProgressBar>
    );
  if (!survey.ok)
    return (
      <div className="verify-step">
        <p className="fault" role="alert">
          {survey.message}
        </p>
        <div className="actions">
          <Button className="button" onPress={close}>
            Close
          </Button>
        </div>
      </div>
    );
  return <Mapping file={file} survey={survey.value} close={close} />;
}

interface MappingProps {
  file: File;
  survey: InventorySurvey;
  close: () => void;
}

function Mapping({ file, survey, close }: MappingProps) {
  const { trees, faulty, faults, properties } = survey;
  const [mapping, setMapping] = useState<InventoryMapping>(survey.guess);
  const [made, setMade] = useState<number | null>(null);
  const [, navigate] = useLocation();
  const make = async () => {
    setMade(0);
    const outcome = await inventoryWorker()
      .make(file, mapping, proxy(setMade))
      .catch((thrown: unknown) => ({ ok: false as const, message: String(thrown) }));
    if (outcome.ok) {
      say(`${cases(outcome.value.made)} made of ${file.name}.`);
      for (const notice of outcome.value.notices) complain(`${file.name}: ${notice}`);
      navigate('/');
    } else complain(outcome.message);
    close();
  };
  const options = [[NONE, 'none'], ...properties.map(({ name }) => [name, name] as const)] as const;
  const part = (what: 'label' | 'species', label: string) => (
    <div>
      <Choice
        label={label}
        value={mapping[what] ?? NONE}
        options={options}
        onChoose={(name) => setMapping({ ...mapping, [what]: name === NONE ? null : name })}
      />
      <p className="hint">
        {exampleText(
          properties.find(({ name }) => name === mapping[what]),
          what === 'label',
        )}
      </p>
    </div>
  );
  return (
    <div className="verify-step">
      <p>
        <strong>{file.name}</strong> holds {trees === 1 ? 'one tree' : `${trees} trees`} with a position. Each
        becomes a case with its place; all else is measured at the tree.
      </p>
      <div className="fields">
        {part('label', 'Label of the tree')}
        {part('species', 'Botanical name')}
      </div>
      {faulty > 0 && (
        <section>
          <h3>
            {faulty === 1 ? 'One feature is left out' : `${faulty} features are left out`}: no tree with a
            position
          </h3>
          <ul className="plain-list">
            {faults.map(({ index, text }) => (
              <li key={index}>
                feature {index}: {text}
              </li>
            ))}
          </ul>
          {faulty > faults.length && <p className="hint">and {faulty - faults.length} more</p>}
        </section>
      )}
      {made !== null && (
        <ProgressBar className="progress" value={made} maxValue={trees}>
          <Label>
            {made} of {trees} cases made…
          </Label>
        </ProgressBar>
      )}
      <div className="actions">
        <Button className="button primary" isDisabled={made !== null} onPress={make}>
          Make {cases(trees)}
        </Button>
        <Button className="button" isDisabled={made !== null} onPress={close}>
          Leave it
        </Button>
      </div>
    </div>
  );
}

const cases = (count: number) => (count === 1 ? 'one case' : `${count} cases`);

function exampleText(property: InventoryProperty | undefined, isLabel: boolean): string {
  if (!property) return 'left empty';
  const { examples, filled, distinctShare } = property;
  const shown = examples.map((text) => `“${text}”`).join(', ') || 'nothing';
  const repeated = isLabel && distinctShare < 0.9 ? '; many trees share one' : '';
  return `for example ${shown}; filled for ${filled}${repeated}`;
}
