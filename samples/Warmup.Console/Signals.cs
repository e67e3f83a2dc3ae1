using System.Runtime.InteropServices;

namespace Warmup.Cli;

/// <summary>Lets the work end in order when the system or a person stops the program. A second signal ends it at once.</summary>
internal sealed class Signals : IDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly List<PosixSignalRegistration> _registrations = [];

    public Signals()
    {
        foreach (var signal in (PosixSignal[])[PosixSignal.SIGINT, PosixSignal.SIGTERM, PosixSignal.SIGHUP])
        {
            _registrations.Add(PosixSignalRegistration.Create(signal, Stop));
        }
    }

    public CancellationToken Token => _stop.Token;

    public void Dispose()
    {
        foreach (var registration in _registrations)
        {
            registration.Dispose();
        }

        _stop.Dispose();
    }

    private void Stop(PosixSignalContext signal)
    {
        signal.Cancel = !_stop.IsCancellationRequested;
        _stop.Cancel();
    }
}
