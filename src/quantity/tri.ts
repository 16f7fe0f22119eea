/** Three-valued truth after Kleene: what the record supports, denies, or cannot tell. */
export type Tri = 'yes' | 'no' | 'cannot tell';

/** Yes only where all are; no where any is; else cannot tell. Of nothing: yes. */
export function triAll(values: Iterable<Tri>): Tri {
  let result: Tri = 'yes';
  for (const value of values) {
    if (value === 'no') return 'no';
    if (value === 'cannot tell') result = 'cannot tell';
  }
  return result;
}

/** Yes where any is; no only where all are; else cannot tell. Of nothing: no. */
export function triAny(values: Iterable<Tri>): Tri {
  let result: Tri = 'no';
  for (const value of values) {
    if (value === 'yes') return 'yes';
    if (value === 'cannot tell') result = 'cannot tell';
  }
  return result;
}

/** The opposite; cannot tell stays so. */
export function triNot(value: Tri): Tri {
  return value === 'yes' ? 'no' : value === 'no' ? 'yes' : 'cannot tell';
}

/** A known truth as three-valued. */
export function triOf(value: boolean): Tri {
  return value ? 'yes' : 'no';
}
