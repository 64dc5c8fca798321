namespace Schematic.Cli.Watch;

/// <summary>Looks at the files again and again, and makes the preview anew when one of them changed and has come to rest: a first look at once, the whole when nothing is saved for a moment.</summary>
/// <param name="maker">Makes previews.</param>
/// <param name="board">Where they are hung up.</param>
internal sealed class PreviewLoop(PreviewMaker maker, PreviewBoard board)
{
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(15);

    // A first look is made whole when nobody has saved for so many looks.
    private const int LooksBeforeImproved = 10;

    /// <summary>Makes the first preview and goes on until it is cancelled; tells of every new preview.</summary>
    public async Task Run(Action<Preview> tell, CancellationToken cancelled)
    {
        var made = Make(tell);
        var last = made;
        var quiet = 0;
        while (!cancelled.IsCancellationRequested)
        {
            await Task.Delay(BetweenLooks, cancelled).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            var now = made.Now();
            var isAtRest = now.AreAs(last);
            last = now;
            if (cancelled.IsCancellationRequested) return;
            if (!isAtRest || now.AreAs(made))
            {
                if (maker.IsDraft && ++quiet == LooksBeforeImproved && maker.Improved(board.Current) is { } whole) board.Show(whole);
                continue;
            }

            made = Make(tell);
            last = made.Now();
            quiet = 0;
        }
    }

    private FileStamps Make(Action<Preview> tell)
    {
        var (preview, files) = maker.Next(board.Current);
        board.Show(preview);
        tell(preview);
        return files;
    }
}
