import { describe, expect, it } from 'vitest';
import { freePhotoPath } from './photoPath.ts';

describe('a name for a photo', () => {
  it('is not one that the case has already, whatever its capitals', () => {
    expect(freePhotoPath({}, 'sign-1', 'jpg')).toBe('photos/sign-1.jpg');
    expect(freePhotoPath({ 'photos/Sign-1.JPG': 'x', 'photos/sign-1-2.jpg': 'y' }, 'sign-1', 'jpg')).toBe(
      'photos/sign-1-3.jpg',
    );
  });
});
