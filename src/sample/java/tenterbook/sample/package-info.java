/**
 * The sample studio: its photographs, drawn by the program itself (cloth folded, clamped between carved boards, dyed, and
 * photographed with a telephone), and its records, told in tables and written through the doors that anybody's are.
 *
 * <p>Promises: the same table gives the same pictures; every picture carries a grey card and states the colour cast put
 * on it; nothing shown is a real person, place or cloth. Start reading at {@link tenterbook.sample.SampleArchive};
 * for the pictures at {@link tenterbook.sample.SamplePhotographs}, then {@link tenterbook.sample.ClothPhotograph}.
 */
package tenterbook.sample;
