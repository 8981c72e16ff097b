/** What dyeing is done with and how it was done: boards, clampings, cloth and lots, the dip curve. */
package tenterbook.web.clamping;
