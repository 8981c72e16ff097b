/**
 * The sample studio's photographs, drawn by the program itself: cloth folded, clamped between carved boards, dyed, and
 * photographed with a telephone.
 *
 * <p>Promises: the same table gives the same pictures; every picture carries a grey card and states the colour cast put
 * on it; nothing shown is a real person, place or cloth. Start reading at {@link tenterbook.sample.SamplePhotographs},
 * then {@link tenterbook.sample.ClothPhotograph} and {@link tenterbook.sample.Motifs}.
 */
package tenterbook.sample;
