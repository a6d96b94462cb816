/** A signature drawn with a finger, a pen or the mouse. */
import { type PointerEvent, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { pngOf } from '../../edit/reportPicture.ts';
import { complain } from '../../state/toast.tsx';

/** Pixels of the drawing kept; it is shown as wide as there is room. */
const WIDTH = 900;
const HEIGHT = 300;
const PEN = 5;

interface SignaturePadProps {
  onDone: (png: Uint8Array) => Promise<void>;
}

export function SignaturePad({ onDone }: SignaturePadProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const last = useRef<[number, number] | null>(null);
  const [drawn, setDrawn] = useState(false);
  const pen = () => canvas.current?.getContext('2d') ?? null;
  const placeOf = (event: PointerEvent<HTMLCanvasElement>): [number, number] => {
    const box = event.currentTarget.getBoundingClientRect();
    return [
      ((event.clientX - box.left) * WIDTH) / box.width,
      ((event.clientY - box.top) * HEIGHT) / box.height,
    ];
  };
  const begin = (event: PointerEvent<HTMLCanvasElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    last.current = placeOf(event);
    stroke(last.current);
    setDrawn(true);
  };
  const stroke = (to: [number, number]) => {
    const context = pen();
    const from = last.current;
    if (!context || !from) return;
    context.lineWidth = PEN;
    context.lineCap = 'round';
    context.lineJoin = 'round';
    // Ink of the printed report, whatever the screen's look.
    context.strokeStyle = '#1c1f23';
    context.beginPath();
    context.moveTo(...from);
    context.lineTo(to[0] + 0.01, to[1]);
    context.stroke();
    last.current = to;
  };
  const move = (event: PointerEvent<HTMLCanvasElement>) => {
    if (last.current) stroke(placeOf(event));
  };
  const end = () => {
    last.current = null;
  };
  const clear = () => {
    pen()?.clearRect(0, 0, WIDTH, HEIGHT);
    setDrawn(false);
  };
  const keep = async () => {
    if (!canvas.current) return;
    try {
      await onDone(await pngOf(canvas.current));
    } catch (thrown) {
      complain(thrown instanceof Error ? thrown.message : String(thrown));
    }
  };
  return (
    <>
      <p className="hint">Sign in the field with a finger, a pen or the mouse.</p>
      <canvas
        ref={canvas}
        className="signature-pad"
        width={WIDTH}
        height={HEIGHT}
        role="img"
        aria-label="Field to sign in"
        onPointerDown={begin}
        onPointerMove={move}
        onPointerUp={end}
        onPointerCancel={end}
      />
      <div className="actions">
        <Button className="button primary" isDisabled={!drawn} onPress={keep}>
          Use this signature
        </Button>
        <Button className="button" isDisabled={!drawn} onPress={clear}>
          Begin again
        </Button>
      </div>
    </>
  );
}
