// The shape of a remark in the working of a formula, so that words need not know formulas.

export interface WorkingRemark { readonly code: string; readonly args: Readonly<Record<string, string | number>> }
