/** Source text to tree. The one place that knows the CEL parser. */
import { type ASTNode, Environment, ParseError } from '@marcbachmann/cel-js'
import type { Operator, Tree } from './tree.ts'
import type { ExpressionProblem } from './types.ts'

const MOST_CHARACTERS = 4000
const parser = new Environment({
  unlistedVariablesAreDyn: true,
  limits: { maxAstNodes: 2000, maxDepth: 60, maxListElements: 200, maxMapEntries: 200, maxCallArguments: 50 },
})

export type Parsed =
  | { readonly tree: Tree; readonly problems: readonly [] }
  | { readonly tree: null; readonly problems: readonly [ExpressionProblem] }

/** Reads an expression. It gives a tree or one problem, with its stretch of the source. */
export function parseExpression(source: string): Parsed {
  try {
    if (source.length > MOST_CHARACTERS)
      throw new Refused({
        code: 'too_large',
        start: 0,
        end: source.length,
        message: `The expression is longer than ${MOST_CHARACTERS} characters.`,
        mend: 'Split it into scores that use one another.',
      })
    return { tree: convert(parser.parse(source).ast), problems: [] }
  } catch (error) {
    return { tree: null, problems: [problemOf(error, source)] }
  }
}

class Refused extends Error {
  readonly problem: ExpressionProblem
  constructor(problem: ExpressionProblem) {
    super(problem.message)
    this.problem = problem
  }
}

const MENDS: Readonly<Record<string, string>> = {
  reserved_identifier: 'Choose another name: this word is reserved in CEL.',
  unterminated_string: 'Close the text with the quotation mark that it began with.',
  limit_exceeded: 'Split it into scores that use one another.',
}

/** What people write who know other notations, where CEL stops at it; and how it is written here. */
const ELSEWHERE: readonly (readonly [RegExp, string, string])[] = [
  [/^=(?!=)/, 'A single = compares nothing', 'Write == for equal, != for different.'],
  [/^and\b/i, 'There is no word "and"', 'Write && between conditions that must both hold.'],
  [/^or\b/i, 'There is no word "or"', 'Write || between conditions of which one must hold.'],
  [/^<>/, '<> compares nothing', 'Write != for different.'],
]
const UNIT_BEHIND = /(\d+(?:\.\d+)?)\s*$/

/** The same at a stretch of the source: told by what stands there, not by the character at which the parser stops. */
function knownElsewhere(source: string, at: number): Pick<ExpressionProblem, 'message' | 'mend'> | null {
  const rest = source.slice(at)
  const found = ELSEWHERE.find(([written]) => written.test(rest))
  if (found) return { message: `${found[1]}.`, mend: found[2] }
  const number = UNIT_BEHIND.exec(source.slice(0, at))?.[1]
  const unit = /^[a-zA-Z%]+/.exec(rest)?.[0]
  if (number === undefined || unit === undefined) return null
  return {
    message: `A unit can't stand behind the number ${number} in an expression.`,
    mend: `Write ${number} alone, which takes the unit of what it stands beside, or quantity(${number}, '${unit}').`,
  }
}

function problemOf(error: unknown, source: string): ExpressionProblem {
  if (error instanceof Refused) return error.problem
  if (!(error instanceof ParseError)) throw error
  const start = Math.min(error.range?.start ?? 0, source.length)
  return {
    code: error.code === 'limit_exceeded' ? 'too_large' : 'syntax',
    start,
    end: Math.max(start, Math.min(error.range?.end ?? start, source.length)),
    message: source.trim() === '' ? 'The expression is empty.' : `${sentence(error)}.`,
    mend: MENDS[error.code] ?? 'Write a CEL expression, such as min(run.time) or count(run.time) >= 3.',
    ...knownElsewhere(source, start),
  }
}

function sentence(error: ParseError): string {
  if (error.code === 'unexpected_token' && error.summary.endsWith('EOF'))
    return 'The expression ends too early'
  return error.summary.replace(/\.$/, '')
}

const refuse = (node: ASTNode, message: string, mend: string): never => {
  throw new Refused({ code: 'not_supported', start: node.start, end: node.end, message, mend })
}

function convert(node: ASTNode): Tree {
  const at = { start: node.start, end: node.end }
  switch (node.op) {
    case 'value':
      return literal(node, node.args)
    case 'id':
      return { ...at, is: 'name', name: node.args }
    case '.':
      return { ...at, is: 'field', of: convert(node.args[0]), name: node.args[1], nameStart: node.pos }
    case '[]':
      return { ...at, is: 'index', of: convert(node.args[0]), key: convert(node.args[1]) }
    case 'call':
      return { ...at, is: 'call', name: node.args[0], args: node.args[1].map(convert) }
    case 'rcall':
      return {
        ...at,
        is: 'method',
        name: node.args[0],
        of: convert(node.args[1]),
        args: node.args[2].map(convert),
      }
    case 'list':
      return { ...at, is: 'list', items: node.args.map(convert) }
    case 'map':
      return { ...at, is: 'map', entries: node.args.map(([key, value]) => [convert(key), convert(value)]) }
    case '?:':
      return {
        ...at,
        is: 'if',
        test: convert(node.args[0]),
        yes: convert(node.args[1]),
        no: convert(node.args[2]),
      }
    case '||':
    case '&&':
      return {
        ...at,
        is: node.op === '&&' ? 'and' : 'or',
        left: convert(node.args[0]),
        right: convert(node.args[1]),
      }
    case '!_':
      return { ...at, is: 'not', of: convert(node.args) }
    case '-_':
      return { ...at, is: 'minus', of: convert(node.args) }
    case '.?':
    case '[?]':
      return refuse(
        node,
        'Optional access is not part of this language.',
        'Use has(x.name) ? x.name : … instead.',
      )
    default:
      return binary(node.op, node.args, at)
  }
}

const binary = (
  operator: Operator,
  [left, right]: readonly [ASTNode, ASTNode],
  at: { start: number; end: number },
): Tree => ({ ...at, is: 'binary', operator, left: convert(left), right: convert(right) })

function literal(node: ASTNode, value: unknown): Tree {
  const at = { start: node.start, end: node.end }
  if (value === null) return { ...at, is: 'null' }
  if (typeof value === 'boolean') return { ...at, is: 'bool', bool: value }
  if (typeof value === 'string') return { ...at, is: 'text', text: value }
  const n = typeof value === 'bigint' || typeof value === 'number' ? Number(value) : null
  if (n === null)
    return refuse(
      node,
      'Bytes and unsigned numbers are not part of this language.',
      'Write a plain number or text.',
    )
  if (typeof value === 'bigint' && !Number.isSafeInteger(n))
    return refuse(node, 'The whole number is too large to be kept exactly.', 'Write a number below 2^53.')
  return { ...at, is: 'number', n }
}
