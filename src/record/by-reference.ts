/**
 * A view of two things (a project, a document) that gives the same answer again while both are the very same objects. Things are
 * readonly and every edit makes a new one, so an answer can't be behind. Kept only as long as the things themselves are.
 */
export function byReference<A extends object, B extends object, View>(
  view: (a: A, b: B) => View,
): (a: A, b: B) => View {
  const known = new WeakMap<A, WeakMap<B, { readonly answer: View }>>();
  return (a, b) => {
    const ofA = known.get(a) ?? new WeakMap<B, { readonly answer: View }>();
    known.set(a, ofA);
    const there = ofA.get(b) ?? { answer: view(a, b) };
    ofA.set(b, there);
    return there.answer;
  };
}
