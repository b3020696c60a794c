using System.Runtime.InteropServices;
using GaitSeat.Cli;

using var stop = new CancellationTokenSource();
Console.CancelKeyPress += (_, press) =>
{
    press.Cancel = true;
    stop.Cancel();
};
// What systemd, containers and Windows services send.
using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, signal =>
{
    signal.Cancel = true;
    stop.Cancel();
});

return await CommandLine.RunAsync(args, AnsiConsoles.Create(), stop.Token);
