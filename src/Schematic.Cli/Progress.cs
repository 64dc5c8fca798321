using System.Globalization;

namespace Schematic.Cli;

/// <summary>Tells on standard error that work goes on, once a second from the first second; shorter work says nothing.</summary>
public sealed class Progress : IDisposable
{
    private readonly TextWriter _error;
    private readonly string _doing;
    private readonly Lock _gate = new();
    private readonly Timer _timer;
    private int _seconds;
    private bool _isOver;

    /// <summary>Begins to count.</summary>
    public Progress(TextWriter error, string doing)
    {
        _error = error;
        _doing = doing;
        _timer = new Timer(_ => Tick(), null, TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(1));
    }

    /// <summary>A second went by.</summary>
    public void Tick()
    {
        lock (_gate)
        {
            if (_isOver) return;
            _seconds++;
            _error.Write($"\r{_doing} ... {_seconds.ToString(CultureInfo.InvariantCulture)} s");
            _error.Flush();
        }
    }

    /// <summary>Ends the line, where there is one.</summary>
    public void Dispose()
    {
        _timer.Dispose();
        lock (_gate)
        {
            _isOver = true;
            if (_seconds > 0) _error.Write("\n");
        }
    }
}
