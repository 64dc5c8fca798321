namespace Schematic.Cli.Watch;

/// <summary>Looks at the files again and again, and makes the preview anew when one of them changed and has come to rest.</summary>
/// <param name="maker">Makes previews.</param>
/// <param name="board">Where they are hung up.</param>
internal sealed class PreviewLoop(PreviewMaker maker, PreviewBoard board)
{
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(25);

    /// <summary>Makes the first preview and goes on until it is cancelled; tells of every new preview.</summary>
    public async Task Run(Action<Preview> tell, CancellationToken cancelled)
    {
        var made = Make(tell);
        var last = made;
        while (!cancelled.IsCancellationRequested)
        {
            await Task.Delay(BetweenLooks, cancelled).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            var now = made.Now();
            var isAtRest = now.AreAs(last);
            last = now;
            if (!isAtRest || now.AreAs(made) || cancelled.IsCancellationRequested) continue;
            made = Make(tell);
            last = made.Now();
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
