/** How far up its scale a word stands, as filled boxes beside the word: seen without colour. */
interface StepsMarkProps {
  scale: readonly string[];
  word: string;
}

export function StepsMark({ scale, word }: StepsMarkProps) {
  const step = scale.indexOf(word);
  return (
    <svg
      className={`steps-mark ${step >= 2 ? 'upper' : ''}`}
      viewBox={`0 0 ${scale.length * 10 - 2} 12`}
      width={scale.length * 10 - 2}
      height={12}
      aria-hidden="true"
    >
      {scale.map((each, i) => (
        <rect
          key={each}
          x={i * 10 + 0.75}
          y={11.25 - (5.5 + 1.6 * i)}
          width={6.5}
          height={5.5 + 1.6 * i}
          fill={i <= step ? 'currentColor' : 'none'}
          stroke="currentColor"
          strokeWidth={1.2}
        />
      ))}
    </svg>
  );
}
