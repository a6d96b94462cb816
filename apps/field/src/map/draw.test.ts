import { describe, expect, it } from 'vitest';
import { linesInPlane, scaleLength } from './draw.ts';
import { planeAround } from './plane.ts';

describe('the scale bar', () => {
  it('is a round length in the person’s units, not longer than there is room for', () => {
    expect(scaleLength(130, 'metric')).toEqual({ lengthM: 100, text: '100 m' });
    expect(scaleLength(7400, 'metric')).toEqual({ lengthM: 5000, text: '5 km' });
    expect(scaleLength(0.4, 'metric').text).toBe('0.2 m');
    const feet = scaleLength(130, 'us');
    expect(feet.text).toBe('200 ft');
    expect(feet.lengthM).toBeCloseTo(60.96, 6);
    expect(scaleLength(5000, 'us')).toEqual({ lengthM: 2 * 1609.344, text: '2 mi' });
  });
});

describe('the background', () => {
  it('knows the box of each line', () => {
    const plane = planeAround([{ longitude: 10, latitude: 50 }]);
    const { boxes } = linesInPlane(
      {
        lonLatDeg: Float64Array.of(10, 50, 10.01, 50.01, 9.99, 49.99, 10, 50),
        starts: Uint32Array.of(0, 2, 4),
      },
      plane,
    );
    const [west, south, east, north] = boxes;
    expect([west, south].map((value) => Math.abs(value!))).toEqual([
      expect.closeTo(0, 6),
      expect.closeTo(0, 6),
    ]);
    // A hundredth of a degree is 1112 m of latitude, and 715 m of longitude at 50 degrees.
    expect(east).toBeCloseTo(714.7, 0);
    expect(north! / 1112).toBeCloseTo(1, 3);
    expect(boxes[4]).toBeLessThan(0);
  });
});
