package lapyard.store;

/** Hears of every new revision, whichever server kept it. Is called by the thread that saved, and must not wait. */
public interface NewsListener {
    void saved(String garden, long revision);

    /** News may have been lost: look again at what you hold. */
    void missed();
}
