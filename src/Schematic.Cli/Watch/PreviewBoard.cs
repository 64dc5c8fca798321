namespace Schematic.Cli.Watch;

/// <summary>Where the preview of the moment hangs, and where one waits for the next.</summary>
internal sealed class PreviewBoard
{
    private readonly Lock _gate = new();
    private TaskCompletionSource _changed = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>The preview of the moment.</summary>
    public Preview Current { get; private set; } = Preview.Nothing;

    /// <summary>Hangs up another.</summary>
    public void Show(Preview preview)
    {
        TaskCompletionSource changed;
        lock (_gate)
        {
            Current = preview;
            changed = _changed;
            _changed = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        }

        changed.SetResult();
    }

    /// <summary>The preview of the moment if it is newer than a version, or the next one; null when none came in time.</summary>
    public async Task<Preview?> After(int version, TimeSpan longest, CancellationToken cancelled)
    {
        Task changed;
        lock (_gate)
        {
            if (Current.Version > version || Current.Version < version) return Current;
            changed = _changed.Task;
        }

        try
        {
            await changed.WaitAsync(longest, cancelled).ConfigureAwait(false);
            return Current;
        }
        catch (TimeoutException)
        {
            return null;
        }
    }
}
