/**
 * What a label must and may say: fibre content, origin and care by market, with the rule beside each line.
 *
 * <p>Rules are data under {@code /label}, each with its citation and whether the source was read or remembered. Says nothing
 * that is not recorded; refuses or asks instead. It is no legal advice. Start at {@link tenterbook.label.rule.FibreStatement}
 * and {@link tenterbook.label.rule.CareWords}. No layout here, and no I/O but its own tables.
 */
package tenterbook.label.rule;
