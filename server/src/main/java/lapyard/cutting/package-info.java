/**
 * In: lengths wanted and stock to cut them from. Out: a cutting plan, its cost and a proved bound.
 * Must not know beds, walls or documents.
 *
 * <p>Three calls: {@link lapyard.cutting.CuttingSolver#solve} plans a job; {@link lapyard.cutting.Replan#of} plans what is
 * left of it once boards have been bought, cut or spoiled, told as {@link lapyard.cutting.Sawn}; {@link
 * lapyard.cutting.NearMisses#of} looks for lengths that nearly save a board. {@link lapyard.cutting.SawBoard}, {@link
 * lapyard.cutting.Batches} and {@link lapyard.cutting.Ledger} lay a plan out for the bench.
 */
package lapyard.cutting;
