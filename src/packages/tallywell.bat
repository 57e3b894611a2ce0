@echo off
rem Starts Tallywell with the Java of this system; without arguments the desktop program.
where java >nul 2>nul
if errorlevel 1 (
  echo Tallywell needs Java 17 or newer, and there is no Java here.
  pause
  exit /b 1
)
if "%~1"=="" (
  start "" javaw -jar "%~dp0tallywell.jar"
) else (
  java -jar "%~dp0tallywell.jar" %*
)
