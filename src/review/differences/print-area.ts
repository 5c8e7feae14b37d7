import { printAddress, type Area } from '../../workbook/address.ts'

/** `C5`, `C5:D9` */
export const printArea = ({ top, left, bottom, right }: Area): string => (top === bottom && left === right ? printAddress(top, left) : `${printAddress(top, left)}:${printAddress(bottom, right)}`)
