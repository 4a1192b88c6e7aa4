/** An expression as it was written: what the reader makes of the source, before names and types are looked at. */
interface At {
  readonly start: number
  readonly end: number
}

export type Operator = '+' | '-' | '*' | '/' | '%' | '==' | '!=' | '<' | '<=' | '>' | '>=' | 'in'

export type Tree = At &
  (
    | { readonly is: 'number'; readonly n: number }
    | { readonly is: 'text'; readonly text: string }
    | { readonly is: 'bool'; readonly bool: boolean }
    | { readonly is: 'null' }
    | { readonly is: 'name'; readonly name: string }
    | { readonly is: 'field'; readonly of: Tree; readonly name: string; readonly nameStart: number }
    | { readonly is: 'index'; readonly of: Tree; readonly key: Tree }
    | { readonly is: 'call'; readonly name: string; readonly args: readonly Tree[] }
    | { readonly is: 'method'; readonly of: Tree; readonly name: string; readonly args: readonly Tree[] }
    | { readonly is: 'list'; readonly items: readonly Tree[] }
    | { readonly is: 'map'; readonly entries: readonly (readonly [Tree, Tree])[] }
    | { readonly is: 'if'; readonly test: Tree; readonly yes: Tree; readonly no: Tree }
    | { readonly is: 'and' | 'or'; readonly left: Tree; readonly right: Tree }
    | { readonly is: 'not' | 'minus'; readonly of: Tree }
    | { readonly is: 'binary'; readonly operator: Operator; readonly left: Tree; readonly right: Tree }
  )
