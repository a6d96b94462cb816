/** Which section a screen shows; nothing where there is but one. */
import { Segments } from './SettingsButton.tsx';

export function SectionChooser(props: {
  sections: readonly { id: string }[];
  value: string;
  onChoose: (id: string) => void;
}) {
  const { sections, value, onChoose } = props;
  if (sections.length < 2) return null;
  return (
    <Segments
      label="Section"
      hideLabel
      value={value}
      options={sections.map(({ id }) => [id, id] as const)}
      onChoose={onChoose}
    />
  );
}
