/**
 * What a label must and may say of fibres, origin and maker, by market, with the rule beside each line.
 *
 * <p>Rules are data under {@code /label}, each with its citation and whether the source was read or remembered; the list for
 * people is the README beside them. Says nothing that is not recorded and translates nothing; refuses or asks instead. It is no
 * legal advice. Start at {@link tenterbook.labelling.rule.FibreStatement}. No layout here, and no I/O but its own tables.
 */
package tenterbook.labelling.rule;
