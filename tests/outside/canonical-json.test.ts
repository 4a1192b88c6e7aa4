/**
 * The test data of the reference implementation of RFC 8785 (JSON Canonicalization Scheme): the repository
 * cyberphone/json-canonicalization, folders testdata/input and testdata/output, six files. Seen; `arrays` has its
 * input seen there and its output seen in three other implementations that quote it. Spelling as it stands there.
 */
import { expect, test } from 'vitest'
import { canonicalText } from '../../main/records/canonical.ts'

/** Name of the file, its text, and the text it must become. Control characters are written as escapes. */
const VECTORS: readonly (readonly [string, string, string])[] = [
  [
    'arrays',
    '[\n  56,\n  {\n    "d": true,\n    "10": null,\n    "1": [ ]\n  }\n]\n',
    '[56,{"1":[],"10":null,"d":true}]',
  ],
  [
    'french',
    '{\n  "peach": "This sorting order",\n  "péché": "is wrong according to French",\n  "pêche": "but canonicalization MUST",\n  "sin":   "ingnore locale"\n}\n',
    '{"peach":"This sorting order","péché":"is wrong according to French","pêche":"but canonicalization MUST","sin":"ingnore locale"}',
  ],
  [
    'structures',
    '{\n  "1": {"f": {"f": "hi","F": 5} ,"\\n": 56.0},\n  "10": { },\n  "": "empty",\n  "a": { },\n  "111": [ { } ],\n  "A": { }\n}',
    '{"":"empty","1":{"\\n":56,"f":{"F":5,"f":"hi"}},"10":{},"111":[{}],"A":{},"a":{}}',
  ],
  ['unicode', '{\n  "Unnormalized Unicode":"\\u1e0d\\u0307"\n}\n', '{"Unnormalized Unicode":"\u1e0d\u0307"}'],
  [
    'values',
    '{\n  "numbers": [1E30, 4.50, 333333333.33333329, 2e-3, 0.000000000000000000000000001],\n  "escaping": "\\u20ac$\\u000F\\u000aA\'\\u0042\\u0022\\u005c\\\\\\"\\/",\n  "literals": [null, true, false]\n}',
    '{"escaping":"\u20ac$\\u000f\\nA\'B\\"\\\\\\\\\\"/","literals":[null,true,false],"numbers":[1e+30,4.5,333333333.3333333,0.002,1e-27]}',
  ],
  [
    'weird',
    '{\n  "\\u20ac": "Euro Sign",\n  "1": "One",\n  "\\u0080": "Control\\u007f",\n  "\\ud83d\\ude02": "Smiley",\n  "\\u00f6": "Latin Small Letter O With Diaeresis",\n  "\\ufb33": "Hebrew Letter Dalet With Dagesh",\n  "</script>": "Browser Challenge"\n}\n',
    '{"1":"One","</script>":"Browser Challenge","\u0080":"Control\u007f","\u00f6":"Latin Small Letter O With Diaeresis","\u20ac":"Euro Sign","\ud83d\ude02":"Smiley","\ufb33":"Hebrew Letter Dalet With Dagesh"}',
  ],
]

test.each(VECTORS)(
  'STD-FMT-2: the canonical JSON of %s is the reference’s, byte by byte',
  (_, input, output) => {
    const text = canonicalText(JSON.parse(input))
    expect(Buffer.from(text, 'utf8')).toEqual(Buffer.from(output, 'utf8'))
  },
)
