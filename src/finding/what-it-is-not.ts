/** What offsider is not: said on every page that is printed, in the help, and in every letter to camp. */
export const WHAT_IT_IS_NOT =
  'offsider shows cautions and gives advice. It replaces no induction, site procedure, local code, licensed practice or check by a ' +
  'competent person, and reading it is not an induction. It does not command the rig: only the driller moves or stops it. Where nothing is ' +
  'warned of, nothing is cleared: no warning is no clearance.';

/** The paragraph as HTML, at the top of a printed page. */
export const WHAT_IT_IS_NOT_HTML = `<p class="not"><small>${WHAT_IT_IS_NOT}</small></p>`;
