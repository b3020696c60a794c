using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Hosting.WindowsServices;

namespace GaitSeat.Cli.Watching;

/// <summary>The program under the service manager of Windows, which says start and stop in words of its own.</summary>
internal static class WindowsService
{
    private const string Name = "GaitSeat";

    /// <summary>Longer than a clip's process may take to stop.</summary>
    private static readonly TimeSpan _stopPatience = TimeSpan.FromSeconds(90);

    public static bool IsAsked => WindowsServiceHelpers.IsWindowsService();

    /// <summary>Runs the work as a service until the service manager stops it or it ends by itself. Elsewhere than under a service manager a signal stops it.</summary>
    /// <returns>What the work returned.</returns>
    public static async Task<int> RunAsync(Func<CancellationToken, Task<int>> work)
    {
        var service = new Service(work);
        using var host = new HostBuilder()
            .UseWindowsService(o => o.ServiceName = Name)
            .ConfigureServices(services => services
                .Configure<HostOptions>(o => o.ShutdownTimeout = _stopPatience)
                .AddHostedService(provider => service.Under(provider.GetRequiredService<IHostApplicationLifetime>())))
            .Build();
        await host.RunAsync();
        return service.Code;
    }

    private sealed class Service(Func<CancellationToken, Task<int>> work) : BackgroundService
    {
        private IHostApplicationLifetime? _lifetime;

        public int Code { get; private set; }

        public Service Under(IHostApplicationLifetime lifetime)
        {
            _lifetime = lifetime;
            return this;
        }

        protected override async Task ExecuteAsync(CancellationToken stoppingToken)
        {
            Code = await Task.Run(() => work(stoppingToken), CancellationToken.None);
            _lifetime!.StopApplication();
        }
    }
}
