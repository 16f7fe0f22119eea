import { expect, test } from 'vitest';
import { checkDeclinationOfProject } from '../../../src/survey/checks/declination-off-model.ts';
import { AT, problemsOf } from '../build.ts';

const FIELD = {
  declinationDeg: -5.6,
  dipDeg: -65,
  horizontalNt: 24_000,
  totalNt: 57_000,
  model: 'WMM-2025',
  epoch: 2026.2,
  validTo: '2029-11',
};

test.each([
  [-5.1, []],
  [-4.6, []],
  [-4.5, ["the declination of the project is 1.1° off the model's"]],
  [5.4, ['the declination of the project has the wrong sign']],
  [12, ["the declination of the project is 17.6° off the model's"]],
])('a declination of %s where the model has -5.6', (deg, problems) => {
  expect(problemsOf(checkDeclinationOfProject(deg, FIELD, AT))).toEqual(problems);
});

test('the finding names the setting, both figures with their sides, and what to do', () => {
  expect(checkDeclinationOfProject(5.4, FIELD, AT)[0]).toMatchObject({
    place: { file: 'project.json', field: 'declination' },
    excerpt: 'project 5.40° east, WMM-2025 5.60° west',
    remedy: "East is positive, west negative. Turn its sign, or leave it out: the model's is then used.",
  });
});
