/** Units and theme, on this device. */
import { SlidersHorizontal } from 'lucide-react';
import { Button, DialogTrigger, Label, Radio, RadioGroup } from 'react-aria-components';
import { changeSettings, type Settings, useSettings } from '../state/settings.ts';
import { Sheet } from './Sheet.tsx';

export function SettingsButton() {
  const settings = useSettings();
  return (
    <DialogTrigger>
      <Button className="icon-button" aria-label="Units and look">
        <SlidersHorizontal aria-hidden />
      </Button>
      <Sheet title="Units and look">
        <Segments
          label="Units"
          value={settings.units}
          options={[
            ['metric', 'Metric'],
            ['us', 'US'],
          ]}
          onChoose={(units) => changeSettings({ units: units as Settings['units'] })}
        />
        <p className="hint">Only what is shown changes. A case is always kept in SI units.</p>
        <Segments
          label="Look"
          value={settings.theme}
          options={[
            ['system', 'As the device'],
            ['light', 'Light'],
            ['dark', 'Dark'],
          ]}
          onChoose={(theme) => changeSettings({ theme: theme as Settings['theme'] })}
        />
      </Sheet>
    </DialogTrigger>
  );
}

interface SegmentsProps {
  label: string;
  value: string;
  options: readonly (readonly [value: string, label: string])[];
  onChoose: (value: string) => void;
  hideLabel?: boolean;
}

/** A few exclusive choices side by side. */
export function Segments({ label, value, options, onChoose, hideLabel }: SegmentsProps) {
  return (
    <RadioGroup className="segments" orientation="horizontal" value={value} onChange={onChoose}>
      <Label className={hideLabel ? 'out-of-sight' : 'segments-label'}>{label}</Label>
      <div className="segments-row">
        {options.map(([option, text]) => (
          <Radio key={option} value={option} className="segment">
            {text}
          </Radio>
        ))}
      </div>
    </RadioGroup>
  );
}
