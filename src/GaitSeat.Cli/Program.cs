using GaitSeat.Cli;

using var stop = new CancellationTokenSource();
Console.CancelKeyPress += (_, press) =>
{
    press.Cancel = true;
    stop.Cancel();
};

return await CommandLine.RunAsync(args, AnsiConsoles.Create(), stop.Token);
