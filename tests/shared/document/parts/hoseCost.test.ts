import { expect, it } from 'vitest';
import { hoseCost } from '../../../../shared/document/parts/hoseCost.ts';

it('adds both ends to the metres cut: 1.25 m at 24 and ends at 11 and 18.5', () => {
  expect(hoseCost({ pricePerM: 24 }, [{ price: 11 }, { price: 18.5 }], 1250)).toBeCloseTo(59.5, 12);
  expect(hoseCost({ pricePerM: 0 }, [{ price: 0 }, { price: 2 }], 400)).toBe(2);
});

it('tells nothing where one price is not stated', () => {
  expect(hoseCost({}, [{ price: 11 }, { price: 18.5 }], 1250)).toBeUndefined();
  expect(hoseCost({ pricePerM: 24 }, [{ price: 11 }, {}], 1250)).toBeUndefined();
});
